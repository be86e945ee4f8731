/**
 * Publications of the instances that the bench knows, in the order of the README. The instances themselves are not kept
 * here.
 */
const PUBLICATIONS: readonly (readonly [family: string, source: string])[] = [
  ["bw-mv", "Berkey & Wang, J. Oper. Res. Soc. 38 (1987); Martello & Vigo, Management Science 44 (1998)"],
  ["macedo-a", "Macedo, Alves & Valerio de Carvalho, Computers & Operations Research 37 (2010)"],
  ["beng", "Bengtsson, The Computer Journal 25 (1982)"],
  ["gcut", "Beasley, J. Oper. Res. Soc. 36 (1985)"],
  ["cgcut", "Christofides & Whitlock, Operations Research 25 (1977)"],
  ["hopper-turton-c", "Hopper & Turton, European J. Oper. Res. 128 (2001)"],
  ["hopper-n", "Hopper, PhD thesis, Cardiff (2000)"],
  ["burke-n", "Burke, Kendall & Whitwell, Operations Research 52 (2004)"],
  ["ngcut", "Beasley, Operations Research 33 (1985)"],
  ["atp", "Alvarez-Valdes, Parajon & Tamarit, Computers & Operations Research 29 (2002)"],
  ["hopper-turton-m", "Hopper & Turton, Studia Informatica Universalis 2 (2002)"],
  ["ortmann-vs", "Ortmann, Ntene & van Vuuren, European J. Oper. Res. 203 (2010)"],
];

/** Compares names of families: those known here in their order, then others by name. */
export function byPublication(a: string, b: string): number {
  const place = (name: string): number => {
    const found = PUBLICATIONS.findIndex(([family]) => family === name);
    return found < 0 ? PUBLICATIONS.length : found;
  };
  return place(a) - place(b) || (a < b ? -1 : Number(a > b));
}

/** Says what is missing, where such files are published, and how to go on. */
export function missingData(found: string): string {
  const width = Math.max(...PUBLICATIONS.map(([family]) => family.length));
  return [
    `${found}. Expected a folder with files of published instances, one family a file (FAMILY.json).`,
    "The instances were published by:",
    ...PUBLICATIONS.map(([family, source]) => `  ${family.padEnd(width)}  ${source}`),
    "Public collections of cutting and packing instances hold copies of them. published-results.json beside them gives what",
    "other methods reached. bench/README.md describes the fields. Then give the folder: --data FOLDER",
  ].join("\n");
}
