import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { MemberPath, Run } from '../../server/job/frame.ts';
import { MOST_PIECES, MOST_POINTS } from '../../web/state/limits.ts';
import { pasteText } from '../../web/state/paste-text.ts';
import { withPasted, type Column, type PastePlace, type Table } from '../../web/state/paste.ts';
import { cellsOf } from '../../web/state/pasted-cells.ts';
import { isTable } from '../../web/state/pasted-text.ts';
import { rowsAt } from '../../web/state/rows.ts';
import { lineAt } from '../../web/state/paste-box.svelte.ts';
import { withUnitOfLength, type FieldForm } from '../../web/state/typed-text.ts';

const length: FieldForm = { kind: 'length', mayBeEmpty: false };
const columns: readonly Column[] = [
  { name: 'x', form: length },
  { name: 'y', form: length },
  { name: 'z', form: length },
  { name: 'radius', form: { kind: 'length', mayBeEmpty: true } },
];
const blank = { x: 0, y: 0, z: 0, radius: null };
const table: Table = { pointer: '/frame/points', columns, least: 2, most: MOST_POINTS, blank };
const run = newJob('run');

const pasted = (text: string, place: PastePlace = 'whole', job = run) => withPasted(job, cellsOf(text), table, place);
const rowsOf = (text: string, place: PastePlace = 'whole', job = run) => {
  const done = pasted(text, place, job);
  if (!done.ok) throw new Error(JSON.stringify(done.problem));
  return rowsAt(done.job, table.pointer);
};
const problemOf = (text: string, place: PastePlace = 'whole') => {
  const done = pasted(text, place);
  if (done.ok) throw new Error('It was pasted.');
  return done.problem;
};
const point = (x: number, y: number, z: number, radius: number | null = null) => ({ x, y, z, radius });
const said = (text: string, place: PastePlace = 'whole') => pasteText(run, text, table, place).said;

/** Rows of a list at most, as its schema says. */
const mostOf = (list: object): number => (list as { readonly maxItems: number }).maxItems;

describe('how long a table may grow', () => {
  it('is what the job takes', () => {
    const [byPoints, byChain] = MemberPath.anyOf;
    expect(mostOf(Run.properties.points)).toBe(MOST_POINTS);
    expect(mostOf(byPoints.properties.points)).toBe(MOST_POINTS);
    expect(mostOf(byChain.properties.pieces)).toBe(MOST_PIECES);
  });
});

describe('a text from the clipboard', () => {
  it.each([
    ['38.1', false],
    ['38,1', false],
    ['1 1/2 in', false],
    ['38.1\r\n', false],
    ['1,234,567', false],
    ['1\t2', true],
    ['1;2', true],
    ['1\n2', true],
    ['1,2,3', true],
  ])('%j is a table: %s', (text, is) => {
    expect(isTable(text)).toBe(is);
  });

  it.each([
    ['tabs', '1\t2\t3\t60\r\n4\t5\t6\t\r\n'],
    ['semicolons', '1;2;3;60\n4;5;6;\n'],
    ['commas', '1,2,3,60\n4,5,6,\n'],
    ['quotes', '"1","2","3","60"\n"4","5","6",""\n'],
    ['blank lines', '\n1\t2\t3\t60\n\n4\t5\t6\n\n'],
  ])('parts its cells by %s', (_, text) => {
    expect(rowsOf(text)).toEqual([point(1, 2, 3, 60), point(4, 5, 6)]);
  });

  it('has inch marks in its cells, and cells of two lines', () => {
    expect(cellsOf('24"\t36"\t1 1/2"').rows[0]?.cells).toEqual(['24"', '36"', '1 1/2"']);
    expect(cellsOf('"a\nb"\t2\n3\t4').rows.map(({ number, cells }) => [number, cells])).toEqual([
      [1, ['a\nb', '2']],
      [2, ['3', '4']],
    ]);
  });

  it.each([
    ['a decimal comma', '12,5\t0\t0\n1000,250\t0\t0', [12.5, 1000.25]],
    ['one that is clear by another', '12,5\t0\t0\n1,500\t0\t0', [12.5, 1.5]],
    ['one that quotes keep whole', '"12,5","0","0"\n"0,125","0","0"', [12.5, 0.125]],
    ['one beside points between thousands', '1.234,5;0;0\n1.500;0;0', [1234.5, 1500]],
    ['commas between thousands', '1,234.5\t0\t0\n1,500\t0\t0', [1234.5, 1500]],
    ['one in a single column', '12,5\n13,25', [12.5, 13.25]],
  ])('reads %s', (_, text, xs) => {
    expect(rowsOf(text).map((row) => (row as { x: number }).x)).toEqual(xs);
  });

  it('leaves a comma unread that could mean two things, in a table that does not say which', () => {
    const unclear = { kind: 'cell', row: 1, column: 'x', text: '1,500', why: 'length.comma-unclear' };
    expect(problemOf('1,500\t0\t0\n2\t0\t0')).toEqual(unclear);
    expect(problemOf('1,500\t0\t12,5\n2.5\t0\t0')).toEqual(unclear);
  });
});

describe('a first row that names the columns', () => {
  it.each([
    'x\ty\tz\tradius',
    'X (mm)\tY [mm]\tZ, mm\tR / mm',
    'x mm\ty mm\tz mm\tbend radius (mm)',
    'x_mm\ty\tz\tCLR',
  ])('is known in %j', (first) => {
    expect(rowsOf(`${first}\n1\t2\t3\t60\n4\t5\t6\t`)).toEqual([point(1, 2, 3, 60), point(4, 5, 6)]);
  });

  it('sets any order, and leaves out numbers of points and other columns, which it names', () => {
    const done = pasted('#\tr\tz\tnote\ty\tx\n1\t60\t3\tby the door\t2\t1\n2\t\t6\t\t5\t4');
    expect(done.ok && rowsAt(done.job, table.pointer)).toEqual([point(1, 2, 3, 60), point(4, 5, 6)]);
    expect(done.ok && done.unused).toEqual(['note']);
  });

  it('gives its unit to cells that have none, and the text keeps it', () => {
    const done = pasted('x (in)\ty (in)\tz\n24\t1 1/2\t0\n10 mm\t0\t0');
    if (!done.ok) throw new Error(JSON.stringify(done.problem));
    expect(rowsAt(done.job, table.pointer)).toEqual([point(609.6, 38.1, 0), point(10, 0, 0)]);
    expect(done.job.asTyped[`${table.pointer}/0/y`]).toBe('1 1/2 in');
    expect(rowsAt(withUnitOfLength(done.job, 'inch'), table.pointer)).toEqual(rowsAt(done.job, table.pointer));
    const inches = withUnitOfLength(run, 'inch');
    expect(rowsOf('x mm\ty\tz\n254\t1\t0\n0\t0\t0', 'whole', inches)[0]).toEqual(point(254, 25.4, 0));
  });

  it('fills what no column names with nothing, and says so', () => {
    const done = pasted('y\tx\n2\t1\n5\t4');
    expect(done.ok && [rowsAt(done.job, table.pointer), done.absent]).toEqual([
      [point(1, 2, 0), point(4, 5, 0)],
      ['z'],
    ]);
    expect(said('y\tx\n2\t1\n5\t4')).toContain('No column for z: 0 stands there.');
  });

  it('is refused where two columns bear one name', () => {
    expect(problemOf('x\ty\tX mm\n1\t2\t3\n4\t5\t6')).toEqual({ kind: 'heading-twice', heading: 'X mm' });
  });
});

describe('pasting', () => {
  it('lays cells over the table from one cell on, and adds rows', () => {
    const before = rowsAt(run, table.pointer);
    const done = pasted('7\t8\n9 in\t10', { row: before.length - 1, column: 1 });
    if (!done.ok) throw new Error(JSON.stringify(done.problem));
    const last = before.at(-1) as ReturnType<typeof point>;
    expect(rowsAt(done.job, table.pointer)).toEqual([
      ...before.slice(0, -1),
      { ...last, y: 7, z: 8 },
      { ...last, y: 228.6, z: 10, radius: null },
    ]);
    expect(done.job.asTyped).toEqual({ [`${table.pointer}/${String(before.length)}/y`]: '9 in' });
  });

  it('leaves the rows below as they are, or takes them out', () => {
    const before = rowsAt(run, table.pointer);
    const over = pasted('1\t2\t3\n4\t5\t6', { row: 0, column: 0 });
    expect(over.ok && [over.left, rowsAt(over.job, table.pointer).slice(2)]).toEqual([
      before.length - 2,
      before.slice(2),
    ]);
    expect(rowsOf('1\t2\t3\n4\t5\t6')).toHaveLength(2);
  });

  it('puts the job back where the same table is pasted again, whatever was typed', () => {
    const first = pasted('1 in\t2\t3\n4\t5\t6');
    const second = first.ok ? pasted('1\t2\t3\n4\t5\t6', 'whole', first.job) : first;
    expect(second.ok && second.job.asTyped).toEqual({});
  });

  it('changes nothing where one cell is a text, and says which', () => {
    expect(problemOf('1\t2\t3\n4\ttwelve\t6')).toEqual({
      kind: 'cell',
      row: 2,
      column: 'y',
      text: 'twelve',
      why: 'length.not-a-length',
    });
    expect(problemOf('x\ty\tz\n1\t2\t3\n\n4\t5\tn/a')).toMatchObject({ row: 4, column: 'z', text: 'n/a' });
    expect(said('1\t2\t3\n4\ttwelve\t6')).toContain('Row 2, column y: “twelve”. This cannot be read as a length.');
    expect(said('1\t2\t3\n4\t\t6')).toContain('Row 2, column y is empty.');
    expect(said('1\t2\t3\n4\t5')).toContain('Row 2, column z is empty.');
  });

  it('says how many rows are too many and which is the first', () => {
    const many = Array.from({ length: 2000 }, (_, row) => `${String(row)}\t0\t0`);
    const most = String(MOST_POINTS);
    const first = MOST_POINTS + 1;
    expect(problemOf(many.join('\n'))).toEqual({
      kind: 'too-many',
      row: first,
      count: 2000,
      most: MOST_POINTS,
      from: 1,
    });
    expect(problemOf(['x\ty\tz', ...many].join('\n'))).toMatchObject({ row: first + 1 });
    expect(said(many.join('\n'))).toContain(`There are 2,000 rows. The table takes ${most}, and row ${String(first)}`);
    expect(said(many.slice(0, MOST_POINTS).join('\n'), { row: 3, column: 0 })).toContain(
      `from its row 4 on there is room for ${String(MOST_POINTS - 3)}, and pasted row ${String(MOST_POINTS - 2)} is`,
    );
    expect(rowsOf(many.slice(0, MOST_POINTS).join('\n'))).toHaveLength(MOST_POINTS);
  });

  it('does not guess where there are more columns than fit, or too few rows', () => {
    expect(problemOf('1\t2\t3\t4\t5\n1\t2\t3\t4\t5')).toEqual({ kind: 'too-wide', row: 1, count: 5, room: 4 });
    expect(problemOf('1\t2\n1\t2', { row: 0, column: 3 })).toEqual({ kind: 'too-wide', row: 1, count: 2, room: 1 });
    expect(problemOf('1\t2\t3')).toEqual({ kind: 'too-few', count: 1, least: 2 });
    expect(problemOf('x\ty\tz\n')).toEqual({ kind: 'nothing' });
  });
});

describe('the row in the way', () => {
  it('is found in the text', () => {
    const text = 'ab\ncde\nf';
    const marked = [1, 2, 3].map((row) => text.slice(lineAt(text, row).start, lineAt(text, row).end));
    expect(marked).toEqual(['ab', 'cde', 'f']);
  });
});
