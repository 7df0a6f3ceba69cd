import { newJob } from '../../server/job/default-job.ts';
import type { ChainPiece, Member, MemberEnd } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { ExportInput } from '../../server/exports/export-file.ts';
import { plan } from '../../server/solver/plan.ts';

const FREE: MemberEnd = { end: 'free' };

/** What an export is made from. */
export const inputOf = (job: Job, member: string | null = null): ExportInput => ({ plan: plan(job), job, member });

/** A frame of members with a tube of 38.1 × 1.65. */
export function frameOf(members: readonly Member[]): Job {
  const job = newJob('members');
  return {
    ...job,
    tube: { ...job.tube, outsideDiameter: 38.1, wall: 1.65 },
    frame: { shape: 'members', members: [...members] },
  };
}

/** A straight member between two points, its ends free or on others. */
export const straight = (
  name: string,
  [from, to]: readonly [readonly [number, number, number], readonly [number, number, number]],
  ends: { start?: MemberEnd; finish?: MemberEnd } = {},
): Member => ({
  name,
  path: {
    by: 'points',
    points: [from, to].map(([x, y, z]) => ({ x, y, z, radius: null })),
    closed: false,
  },
  start: ends.start ?? FREE,
  finish: ends.finish ?? FREE,
});

/** A member of straights and arcs in turn, its start out of the frame's planes. */
export const chain = (name: string, pieces: ChainPiece[]): Member => ({
  name,
  path: {
    by: 'chain',
    start: { x: 12.5, y: -40, z: 7 },
    direction: { x: 2, y: 1, z: 2 },
    normal: { x: 1, y: -2, z: 0 },
    pieces,
  },
  start: FREE,
  finish: FREE,
});

export const line = (length: number): ChainPiece => ({ piece: 'straight', length });
export const arc = (angle: number, radius: number, rotation: number): ChainPiece => ({
  piece: 'arc',
  angle,
  radius,
  rotation,
  made: 'rolled',
});

/** Bends in turned planes, one of more than half a turn. */
export const inSpace = (): Job =>
  frameOf([chain('run in space', [line(200), arc(75, 150, 0), line(180), arc(200, 260, 100), line(90)])]);

/** A straight rail with one brace square to it and one at 50°, both with saddles. */
export function braced(): Job {
  const onto: MemberEnd = { end: 'saddle', onto: 'rail' };
  const turn = (50 * Math.PI) / 180;
  return frameOf([
    straight('rail', [
      [0, 0, 0],
      [1000, 0, 0],
    ]),
    straight(
      'square',
      [
        [300, 0, 0],
        [300, 0, 400],
      ],
      { start: onto },
    ),
    straight(
      'slanting',
      [
        [600 + 400 * Math.cos(turn), 0, 400 * Math.sin(turn)],
        [600, 0, 0],
      ],
      { finish: onto },
    ),
  ]);
}
