// A bender who has nothing but the printed sheet, a tape and the machine: what is read back from the file is bent in
// software, on a machine that springs back as its test bends did, and the tube is measured.
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { TestBend } from '../../server/job/machine.ts';
import { renderSheet } from '../../server/sheets/render-sheet.ts';
import { centrelineFromChain, placeAt, type Centreline, type Link } from '../../server/solver/geometry/centreline.ts';
import { length, subtract, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { plan } from '../../server/solver/plan.ts';
import { readPdf } from './read-pdf.ts';

const RADIAN = Math.PI / 180;
const DIAMETER = 38.1;

/** What this machine truly does: it loses 1.24° and 4.3 % of what it is told, and leaves this radius [mm]. */
const LOST = { fixed: 1.24, share: 0.043 } as const;
const LEAVES = 118.4;

const testBend = (commandedAngle: number): TestBend => ({
  commandedAngle,
  measuredAngle: commandedAngle - LOST.fixed - LOST.share * commandedAngle,
  measuredRadius: LEAVES,
  scribedBefore: null,
  scribedAfter: null,
  tubeDiameter: DIAMETER,
  wall: 1.65,
  dieRadius: 114.3,
  heat: '',
});

function jobOf(frame: Job['frame']): Job {
  const job = newJob(frame.shape);
  const springback = { method: 'test-bends' as const, bends: [20, 70, 120].map(testBend) };
  return { ...job, frame, machine: { ...job.machine, springback } };
}

/** One row as it stands on the sheet: mm from the datum end, degrees of turn with their sign, mm round the tube, degrees. */
type Row = { mark: number; turn: number; round: number; told: number };

/** Cut length and rows, from the texts of the printed page alone. */
async function readSheet(job: Job): Promise<{ cut: number; rows: Row[] }> {
  const sheet = await renderSheet('bend', { plan: plan(job), job, revision: null });
  if (!sheet.ok) throw new Error(sheet.reason);
  const said = (await readPdf(sheet.pdf)).flatMap(({ texts }) => texts);
  const cut = Number(/^cut (\d+\.\d) mm$/m.exec(said.join('\n'))?.[1]);
  const number = String.raw`[−-]?\d+(?:\.\d+)?`;
  const row = new RegExp(
    String.raw`\n\d+ ?\n(${number})\nmm\nmiddle [^\n]+\n(?:no turn|(${number})°\n(${number})\nmm)\n(${number})°\nreleased`,
    'g',
  );
  const value = (text: string | undefined): number => Number((text ?? '0').replace('−', '-'));
  const rows = [...said.join('\n').matchAll(row)].map(([, mark, turn, round, told]) => ({
    mark: value(mark),
    turn: value(turn),
    round: value(round),
    told: value(told),
  }));
  return { cut, rows };
}

/** The tube as that machine makes it: the turn laid off round the tube, each bend begun at its mark. */
function bent({ cut, rows }: { cut: number; rows: readonly Row[] }): Centreline {
  let used = 0;
  const links = rows.flatMap(({ mark, turn, round, told }): Link[] => {
    const angle = (told - LOST.fixed - LOST.share * told) * RADIAN;
    const straight: Link = { kind: 'straight', length: mark - used };
    used = mark + LEAVES * angle;
    const rotation = Math.sign(turn) * ((2 * round) / DIAMETER);
    return [straight, { kind: 'arc', radius: LEAVES, angle, rotation, made: 'die' }];
  });
  const start = { point: { x: 0, y: 0, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: 1 } };
  return centrelineFromChain(start, [...links, { kind: 'straight', length: cut - used }]);
}

const at = (x: number, y: number, z: number) => ({ x, y, z, radius: null });
const between = (line: Centreline, from: number, to: number): number => {
  const [a, b]: (Vector3 | undefined)[] = [placeAt(line, from)?.point, placeAt(line, to)?.point];
  if (a === undefined || b === undefined) throw new Error('Such a place is not on the tube.');
  return length(subtract(b, a));
};

describe('a bender who follows the sheet', () => {
  it('bends a run in space whose ends are where they were drawn', async () => {
    const points = [
      at(0, 0, 0),
      at(600, 0, 0),
      at(600, 500, 0),
      at(600, 500, 500),
      at(1000, 500, 500),
      at(1000, 900, 700),
    ];
    const read = await readSheet(jobOf({ shape: 'run', points }));
    expect(read.rows).toHaveLength(4);
    const line = bent(read);
    expect(line.length).toBeCloseTo(read.cut, 6);
    // half a tenth of a millimetre and of a degree at each of four bends, over two metres of tube
    const ends = length(subtract(points[5]!, points[0]!));
    expect(Math.abs(between(line, 0, line.length) - ends)).toBeLessThan(4);
  });

  it('bends a hoop as wide over the outside as it was ordered', async () => {
    const frame = newJob('hoop').frame;
    if (frame.shape !== 'hoop') throw new Error('The first shape is a hoop.');
    const read = await readSheet(jobOf(frame));
    expect(read.rows).toHaveLength(2);
    const line = bent(read);
    const { mark } = read.rows[0]!;
    expect(Math.abs(between(line, mark, line.length - mark) + DIAMETER - frame.width.value)).toBeLessThan(0.5);
    expect(Math.abs(between(line, 0, line.length) + DIAMETER - frame.width.value)).toBeLessThan(1.5);
  });

  it('and one who takes the middle marks for the starts does not', async () => {
    const points = [at(0, 0, 0), at(600, 0, 0), at(600, 500, 0), at(600, 500, 500)];
    const read = await readSheet(jobOf({ shape: 'run', points }));
    const wrong = { ...read, rows: read.rows.map((row) => ({ ...row, mark: row.mark + (LEAVES * Math.PI) / 4 })) };
    const ends = length(subtract(points[3]!, points[0]!));
    const line = bent(read);
    expect(Math.abs(between(line, 0, line.length) - ends)).toBeLessThan(2);
    const other = bent(wrong);
    expect(Math.abs(between(other, 0, other.length) - ends)).toBeGreaterThan(10);
  });
});
