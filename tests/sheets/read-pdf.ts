import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

const MM_PER_POINT = 25.4 / 72;

/** One painted path: the width of its line [mm], 0 where it is only filled, and its places on the page [mm], y down from the top left corner. */
export type PaintedPath = { readonly width: number; readonly points: readonly (readonly [number, number])[] };
export type ReadPage = {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly string[];
  readonly paths: readonly PaintedPath[];
};

type Matrix = readonly [number, number, number, number, number, number];
const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

/** Reads texts and painted paths back from the bytes of a PDF; paths are made of moves and straight lines only. */
export async function readPdf(pdf: Uint8Array): Promise<ReadPage[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const [, , right = 0, top = 0] = page.view;
    const content = await page.getTextContent();
    const texts = content.items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.str] : []));
    const operators = await page.getOperatorList();
    pages.push({ width: right * MM_PER_POINT, height: top * MM_PER_POINT, texts, paths: readPaths(operators, top) });
  }
  await document.destroy();
  return pages;
}

function readPaths(operators: { fnArray: number[]; argsArray: unknown[] }, top: number): PaintedPath[] {
  const paths: PaintedPath[] = [];
  let state: { matrix: Matrix; width: number } = { matrix: [1, 0, 0, 1, 0, 0], width: 1 };
  const kept: (typeof state)[] = [];
  for (const [index, operator] of operators.fnArray.entries()) {
    const args = operators.argsArray[index];
    if (operator === OPS.save) kept.push(state);
    else if (operator === OPS.restore) state = kept.pop()!;
    else if (operator === OPS.transform) state = { ...state, matrix: times(state.matrix, args as Matrix) };
    else if (operator === OPS.setLineWidth) state = { ...state, width: (args as [number])[0] };
    else if (operator === OPS.constructPath) {
      const [paint, [path]] = args as [number, [Float32Array | null]];
      if (path === null) continue;
      const [a, b, c, d, e, f] = state.matrix;
      const points: (readonly [number, number])[] = [];
      for (let at = 0; at < path.length;) {
        const code = path[at];
        if (code === 4) {
          at += 1;
          continue;
        }
        if (code !== 0 && code !== 1)
          throw new Error(`a path holds an operator that is not a move or a line: ${String(code)}`);
        const [x, y] = [path[at + 1]!, path[at + 2]!];
        points.push([(a * x + c * y + e) * MM_PER_POINT, (top - (b * x + d * y + f)) * MM_PER_POINT]);
        at += 3;
      }
      const stroked = paint !== OPS.fill && paint !== OPS.eoFill;
      paths.push({ width: stroked ? state.width * Math.hypot(a, b) * MM_PER_POINT : 0, points });
    }
  }
  return paths;
}

/** Paths drawn with one line width [mm]. */
export const ofWidth = (page: ReadPage, width: number): PaintedPath[] =>
  page.paths.filter((path) => Math.abs(path.width - width) < 1e-3);
