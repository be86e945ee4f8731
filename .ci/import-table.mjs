import { isBuiltin } from "node:module";
import { posix } from "node:path";
import ts from "typescript";

/**
 * Which of our packages each one may import, as the design lays down: at run time, and for types alone.
 * @type {Readonly<Record<string, { readonly values: readonly string[], readonly types?: readonly string[] }>>}
 */
const table = {
  measure: { values: [] },
  packing: { values: [] },
  shapes: { values: ["measure"] },
  nesting: { values: [] },
  cards: { values: ["measure", "shapes"] },
  planner: { values: ["measure", "packing", "shapes", "nesting", "cards"] },
  svg: { values: ["measure", "shapes"], types: ["packing", "nesting", "planner"] },
  cli: { values: ["measure", "packing", "shapes", "nesting", "cards", "planner", "svg"] },
  workbench: { values: ["measure", "packing", "shapes", "nesting", "cards", "planner", "svg"] },
};

/** These run where Node does, or draw a page; all others know neither. */
const outside = ["cli", "workbench"];

/**
 * @typedef {{ readonly specifier: string, readonly typeOnly: boolean, readonly line: number }} Import
 * @typedef {{ readonly path: string, readonly text: string }} Source a file and its path from the root
 */

/**
 * Every import, re-export, dynamic import, require and reference of a file. `import { type A }` counts as a
 * run-time import, which it is where type-only names are kept as written.
 * @param {Source} source
 * @returns {Import[]}
 */
function importsOf({ path, text }) {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  /** @type {Import[]} */
  const found = [];
  /** @param {ts.Node | undefined} literal @param {boolean} typeOnly */
  const add = (literal, typeOnly) => {
    if (!literal) return;
    const line = file.getLineAndCharacterOfPosition(literal.getStart()).line + 1;
    const specifier = ts.isStringLiteralLike(literal) ? literal.text : `(computed) ${literal.getText()}`;
    found.push({ specifier, typeOnly, line });
  };
  /** @param {ts.Node} node */
  const visit = (node) => {
    if (ts.isImportDeclaration(node)) {
      add(node.moduleSpecifier, node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword);
    } else if (ts.isExportDeclaration(node)) {
      add(node.moduleSpecifier, node.isTypeOnly);
    } else if (ts.isImportTypeNode(node)) {
      add(ts.isLiteralTypeNode(node.argument) ? node.argument.literal : node.argument, true);
    } else if (ts.isExternalModuleReference(node)) {
      add(node.expression, false);
    } else if (ts.isModuleDeclaration(node) && ts.isStringLiteral(node.name)) {
      add(node.name, true);
    } else if (ts.isCallExpression(node)) {
      const called = node.expression;
      const loads =
        called.kind === ts.SyntaxKind.ImportKeyword || (ts.isIdentifier(called) && called.text === "require");
      if (loads) add(node.arguments[0], false);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  for (const { fileName, pos } of file.typeReferenceDirectives) {
    found.push({
      specifier: fileName,
      typeOnly: true,
      line: file.getLineAndCharacterOfPosition(pos).line + 1,
    });
  }
  return found;
}

/** @param {string} specifier @returns {string} `@scope/name` or `name`, without the path into the package */
function packageOf(specifier) {
  const parts = specifier.split("/");
  return parts.slice(0, specifier.startsWith("@") ? 2 : 1).join("/");
}

/**
 * @param {Import} found
 * @param {string} name of the package it stands in
 * @param {string} path of the file it stands in
 * @param {Record<string, string>} dependencies of that package
 * @returns {string | undefined} what is wrong with the import
 */
function faultOf({ specifier, typeOnly }, name, path, dependencies) {
  const core = !outside.includes(name);
  if (specifier.startsWith("(computed)")) return "an import must name what it loads";
  if (specifier.startsWith(".") || specifier.startsWith("/")) {
    const target = posix.join(posix.dirname(path), specifier);
    if (target.startsWith(`packages/${name}/src/`) || target === `packages/${name}/package.json`)
      return undefined;
    return target.startsWith("bench/") || target.startsWith("test-fixtures/")
      ? `bench/ and test-fixtures/ are imported by nobody, but ${specifier} is`
      : `${specifier} leaves the package's src`;
  }
  if (isBuiltin(specifier) || specifier === "node") {
    return core ? `a core package does without Node, but imports ${specifier}` : undefined;
  }
  const wanted = packageOf(specifier);
  if (wanted === `@sheetwright/${name}`) return "a package imports itself by a relative path";
  if (wanted === "@sheetwright/bench") return "bench/ is imported by nobody";
  if (wanted.startsWith("@sheetwright/")) {
    const other = wanted.slice("@sheetwright/".length);
    const { values, types = [] } = table[name] ?? { values: [] };
    if (!values.includes(other) && !types.includes(other)) return `${name} may not import ${other}`;
    if (!values.includes(other) && !typeOnly)
      return `${name} may import only types of ${other}: use import type`;
  }
  if (!(wanted in dependencies)) return `${wanted} is imported but is not among the dependencies`;
  return undefined;
}

/**
 * What in the packages breaks the table of imports. Types count as dependencies too: the published declarations
 * name them, so whoever installs the package needs them.
 * @param {readonly { readonly name: string, readonly manifest: import("./workspace.mjs").Manifest }[]} packages
 *   by the name of their folder
 * @param {readonly Source[]} sources all files under packages/<name>/src
 * @returns {string[]} a sentence a fault, with file and line
 */
export function importFaults(packages, sources) {
  /** @type {string[]} */
  const faults = [];
  for (const { name, manifest } of packages) {
    const at = `packages/${name}/package.json`;
    const allowed = table[name];
    if (!allowed) {
      faults.push(`${at}: the table of imports has no package ${name}`);
      continue;
    }
    if (manifest.name !== `@sheetwright/${name}`) faults.push(`${at}: its name is not @sheetwright/${name}`);
    const dependencies = { ...manifest.dependencies, ...manifest.peerDependencies };
    for (const dependency of Object.keys(dependencies)) {
      const other = dependency.startsWith("@sheetwright/")
        ? dependency.slice("@sheetwright/".length)
        : undefined;
      if (other === undefined || allowed.values.includes(other) || allowed.types?.includes(other)) continue;
      faults.push(`${at}: ${name} may not depend on ${other}`);
    }
    for (const source of sources) {
      if (!source.path.startsWith(`packages/${name}/src/`)) continue;
      for (const found of importsOf(source)) {
        const fault = faultOf(found, name, source.path, dependencies);
        if (fault) faults.push(`${source.path}:${found.line}: ${fault}`);
      }
    }
  }
  return faults;
}
