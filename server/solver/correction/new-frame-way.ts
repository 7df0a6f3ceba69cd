import { isDieBend } from '../geometry/centreline.ts';
import { RADIANS } from '../geometry/angle.ts';
import type { Fixing } from '../../job/fixing.ts';
import type { Band, Figure } from '../../plan/figure.ts';
import type { CheckDimension } from '../../plan/frame.ts';
import { isOfDie } from '../bending/planned-arc.ts';
import type { SetUp } from '../bending/set-up.ts';
import type { SpringbackLaw } from '../bending/springback-law.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import type { ArcPiece } from '../geometry/centreline.ts';
import { correctionTargets } from './correction-targets.ts';
import type { CorrectionWork } from './correction-work.ts';
import { drawnMembers, unjoined } from './leave-way.ts';
import type { CorrectedFrame } from './corrected.ts';
import {
  countFigure,
  judge,
  layOn,
  type Doubt,
  type Effort,
  type LaidDoubt,
  type Outcome,
  type WayDraft,
} from './outcome.ts';
import { CORNER_WIDTHS, END_WIDTHS, outcomeFigures } from './outcome-figures.ts';
import { asCorrected, relaidFrame } from './relaid-frame.ts';
import type { ArcChange, MemberChange } from './relaid-member.ts';
import { workSteps } from './work-steps.ts';

/** What a new frame is made with, and what the plan says about its sizes. */
export type NewFrame = {
  readonly fixing: Fixing;
  /** ± that the whole frame may miss by [mm]. */
  readonly tolerance: number;
  readonly effort: Effort;
  readonly machine: Pick<SetUp, 'angleScatter' | 'planeScatter' | 'markAccuracy'>;
  readonly law: SpringbackLaw;
  /** Members that are bent from their finish. */
  readonly fromFinish: ReadonlySet<string>;
  /** The wanted frame's sizes with their bands. */
  readonly checks: readonly CheckDimension[];
};

/** The frame made anew as planned, and with everything about its bends off one after the other. */
function anewOf(
  work: Pick<CorrectionWork, 'wanted' | 'outsideDiameter' | 'tape' | 'posts'>,
  made: Omit<NewFrame, 'effort' | 'checks'>,
) {
  const { wanted, outsideDiameter, tape, posts } = work;
  const { fixing, tolerance } = made;
  const { targets } = correctionTargets({ fixing, wanted, actual: wanted, outsideDiameter, tape, tolerance });
  const anew = (members: Change): CorrectedFrame =>
    asCorrected(wanted, relaidFrame(wanted, { members, fromFinish: made.fromFinish }), { wanted, outsideDiameter });
  return {
    context: { wanted, actual: wanted, targets, posts },
    asPlanned: anew(new Map()),
    off: singleErrors(wanted, made).map(({ from, changes }) => ({ from, frames: changes.map(anew) })),
  };
}

/** A new frame with everything about its bends off one after the other, each laid on the wanted one. */
export function newFramesOff(...source: Parameters<typeof anewOf>): LaidDoubt[] {
  const { context, off } = anewOf(...source);
  const { wanted, targets } = context;
  return off.map(({ from, frames }) => ({
    from,
    outcomes: frames.map((corrected) => ({ corrected, lay: layOn(wanted, wanted, targets, corrected) })),
  }));
}

/** Make the frame anew: what is left over is what bending scatters. */
export function newFrameWay(work: CorrectionWork, made: NewFrame): WayDraft {
  const { context, asPlanned, off } = anewOf(work, made);
  const base = judge(context, asPlanned);
  const doubts = off.map(({ from, frames }): Doubt => ({ from, outcomes: frames.map((one) => judge(context, one)) }));
  const figures = outcomeFigures(base, [], doubts);
  return {
    key: 'new-frame',
    possible: true,
    reasons: [],
    ...figures,
    ...withPlannedBands(figures, base, made.checks),
    ...unjoined,
    welds: countFigure(made.effort.welds, 'joints'),
    rebends: [],
    trims: [],
    packing: [],
    steps: workSteps([{ key: 'bend-new-frame' }, { key: 'check-sizes' }]),
    members: drawnMembers(base.corrected, base.lay),
    effort: made.effort,
  };
}

type Change = ReadonlyMap<string, MemberChange>;

/**
 * Every way in which one thing about the bends can be off: each bend's angle, rotation and mark by itself, and for all
 * bends alike the law of springback and the radius after release.
 */
function singleErrors(
  wanted: FrameGeometry,
  { machine, law, fromFinish }: Pick<NewFrame, 'machine' | 'law' | 'fromFinish'>,
): { from: string; changes: Change[] }[] {
  const radians = (degrees: number) => degrees * RADIANS;
  const bends = wanted.members.flatMap(({ name, centreline: { pieces } }) =>
    pieces.flatMap((piece, index) => (isDieBend(piece) ? [{ name, piece, index }] : [])),
  );
  const isFirst = ({ name, index }: { name: string; index: number }) => {
    const own = bends.filter((bend) => bend.name === name).map((bend) => bend.index);
    return index === (fromFinish.has(name) ? Math.max(...own) : Math.min(...own));
  };
  const single = (of: typeof bends, change: ArcChange): Change[] =>
    of.map(({ name, index }) => new Map([[name, new Map([[index, change]])]]));
  const alike = (change: (piece: ArcPiece) => ArcChange): Change => {
    const members = new Map<string, Map<number, ArcChange>>();
    for (const { name, piece, index } of bends)
      members.set(name, (members.get(name) ?? new Map<number, ArcChange>()).set(index, change(piece)));
    return members;
  };
  const ofDie = (piece: ArcPiece) => (isOfDie(piece, law) ? { radius: law.radiusPlusMinus } : {});
  return [
    { from: 'angle-scatter', changes: single(bends, { turn: radians(machine.angleScatter) }) },
    {
      from: 'rotation-scatter',
      changes: single(
        bends.filter((bend) => !isFirst(bend)),
        { rotation: radians(machine.planeScatter) },
      ),
    },
    { from: 'tape', changes: single(bends, { mark: machine.markAccuracy }) },
    { from: law.lawFrom, changes: [alike(({ angle }) => ({ turn: law.lawBandFor(angle) }))] },
    { from: law.radiusMeasured ? 'test-bends' : 'springback-model', changes: [alike(ofDie)] },
  ];
}

/** The sizes of the new frame have the bands that the plan of the frame gives them. */
function withPlannedBands(
  { after, cornerWidth, endWidth }: Pick<WayDraft, 'after' | 'cornerWidth' | 'endWidth'>,
  { sizes }: Outcome,
  checks: readonly CheckDimension[],
): Pick<WayDraft, 'after' | 'cornerWidth' | 'endWidth'> {
  const bandFor = (key: string, index: number): Band | null | undefined => {
    const planned = checks.find((check) => check.key === key && check.index === index);
    return planned?.[planned.reference].band;
  };
  const banded = (one: Figure, key: string, index: number): Figure => {
    const planned = bandFor(key, index);
    return planned === undefined ? one : { ...one, band: planned };
  };
  const width = (one: Figure | null, keys: readonly string[]): Figure | null => {
    const size = sizes.find(({ check }) => keys.includes(check.key));
    return one === null || size === undefined ? one : banded(one, size.check.key, size.check.index);
  };
  return {
    after: after.map((one) => ({
      ...one,
      cameBack: banded(one.cameBack, one.key, one.index),
      difference: banded(one.difference, one.key, one.index),
    })),
    cornerWidth: width(cornerWidth, CORNER_WIDTHS),
    endWidth: width(endWidth, END_WIDTHS),
  };
}
