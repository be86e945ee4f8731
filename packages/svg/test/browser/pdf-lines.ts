import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A straight line of a page in millimetres from its top left corner. */
interface PdfLine {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** The one page of a PDF: its size and all straight lines that are painted, in millimetres. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly PdfLine[];
}

type Matrix = readonly [number, number, number, number, number, number];

const MM_PER_POINT = 25.4 / 72;
/** Steps of a path as pdfjs-dist keeps them: 0 move to, 1 line to, 2 and 3 curves, 4 close. */
const COORDINATES = [2, 2, 6, 4, 0];

/** Reads a PDF of one page, following every change of coordinates. */
export async function readPdfPage(pdf: Uint8Array): Promise<PdfPage> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  if (document.numPages !== 1) throw new Error(`The PDF has ${document.numPages} pages.`);
  const page = await document.getPage(1);
  const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
  const { fnArray, argsArray } = await page.getOperatorList();

  const lines: PdfLine[] = [];
  const saved: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  fnArray.forEach((operation, i) => {
    const args = argsArray[i] as readonly unknown[];
    if (operation === OPS.save) saved.push(matrix);
    else if (operation === OPS.restore) matrix = saved.pop() ?? matrix;
    else if (operation === OPS.transform) matrix = multiply(matrix, args as unknown as Matrix);
    else if (operation === OPS.constructPath) {
      const [path] = args[1] as readonly [Readonly<Record<string, number>> | null];
      if (path !== null) lines.push(...linesOf(Object.values(path), matrix));
    }
  });
  await document.destroy();

  const toPage = (x: number, y: number) => [(x - left) * MM_PER_POINT, (top - y) * MM_PER_POINT] as const;
  return {
    width: (right - left) * MM_PER_POINT,
    height: (top - bottom) * MM_PER_POINT,
    lines: lines.map((line) => {
      const [x1, y1] = toPage(line.x1, line.y1);
      const [x2, y2] = toPage(line.x2, line.y2);
      return { x1, y1, x2, y2 };
    }),
  };
}

function multiply(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[2] * b[1],
    a[1] * b[0] + a[3] * b[1],
    a[0] * b[2] + a[2] * b[3],
    a[1] * b[2] + a[3] * b[3],
    a[0] * b[4] + a[2] * b[5] + a[4],
    a[1] * b[4] + a[3] * b[5] + a[5],
  ];
}

function linesOf(path: readonly number[], matrix: Matrix): readonly PdfLine[] {
  const lines: PdfLine[] = [];
  const place = (x: number, y: number): readonly [number, number] => [
    matrix[0] * x + matrix[2] * y + matrix[4],
    matrix[1] * x + matrix[3] * y + matrix[5],
  ];
  let at: readonly [number, number] = [0, 0];
  let start = at;
  for (let i = 0; i < path.length; ) {
    const step = path[i] as number;
    const count = COORDINATES[step] ?? 0;
    const end = step === 4 ? start : place(path[i + count - 1] as number, path[i + count] as number);
    if (step === 0) start = end;
    if (step === 1 || step === 4) lines.push({ x1: at[0], y1: at[1], x2: end[0], y2: end[1] });
    at = end;
    i += 1 + count;
  }
  return lines;
}
