import type { Finding, FindingCode } from '../../plan/finding.ts';
import { blindPlates, plateHoleField, withPlateHole, withPurge } from './changed-context.ts';
import { chamberFlows, type ChamberFlow } from './chamber-flow.ts';
import { lookedAt, passingTroubles, troublesOf } from './chamber-troubles.ts';
import { shutSaddles } from './closed-bore.ts';
import { damFindings } from './dam-findings.ts';
import { flowTroubles } from './flow-findings.ts';
import { LANCE, LEAST_LANCE_HOLE, tightForLance } from './lance.ts';
import type { PurgeContext } from './purge-context.ts';
import { USUAL_PRESSURE, ventBore } from './vent.ts';
import { widerHoles } from './wider-holes.ts';

/** A change of one field that may help, and the purge with it. */
type Change = { readonly wayOut: NonNullable<Finding['wayOut']>; readonly changed: () => PurgeContext };

/** A hole through a plate as shops drill it [mm]; common practice, no source. */
const USUAL_PLATE_HOLE = 6;

/**
 * What is wrong with the chambers of a job, each with the first change that mends it there and makes it worse nowhere,
 * by trying it out: one that leaves nothing new, else for a stop one that leaves no new stop.
 *
 * @param troubles findings of each chamber, in their order
 */
export function withWaysOut(
  chambers: readonly ChamberFlow[],
  troubles: readonly (readonly Finding[])[],
  context: PurgeContext,
): Finding[] {
  // one change may mend many chambers: it is tried once
  const tried = new Map<string, Told[]>();
  const tryOut = ({ wayOut, changed }: Change): Told[] => {
    const key = JSON.stringify(wayOut);
    const known = tried.get(key) ?? triedOut(changed());
    tried.set(key, known);
    return known;
  };
  let known: Told[] | null = null;
  const before = (): Told[] => (known ??= toldOf(chambers, troubles, context));
  return chambers.flatMap((chamber, index) =>
    (troubles[index] ?? []).map((found): Finding => {
      const mending = changesFor(found.code, chamber, context).flatMap((change) => {
        const after = tryOut(change);
        return isGone(found, chamber, before(), after) ? [{ change, worse: newlyTold(before(), after) }] : [];
      });
      const clean = mending.find(({ worse }) => worse.length === 0);
      const milder =
        found.grade === 'stop' ? mending.find(({ worse }) => worse.every(({ grade }) => grade !== 'stop')) : undefined;
      const chosen = clean ?? milder;
      return chosen === undefined ? found : { ...found, wayOut: chosen.change.wayOut };
    }),
  );
}

function changesFor(code: FindingCode, chamber: ChamberFlow, context: PurgeContext): Change[] {
  const { purge, typed, bore } = context;
  const { feed, vents } = chamber;
  const purged = (field: string, value: string | number | null, change: Partial<typeof purge>): Change => ({
    wayOut: { field, value },
    changed: () => withPurge(context, change),
  });
  switch (code) {
    case 'closed-chamber':
    case 'closed-by-weld':
    case 'one-opening':
    case 'weld-in-dead-leg': {
      const whole = purged('/purge/extent', 'whole-frame', { extent: 'whole-frame' });
      const holes = { ...purge.holes, underSaddles: 'all' as const };
      const drilled = purged('/purge/holes/underSaddles', 'all', { holes });
      // nobody drills under a saddle that is welded already
      const canDrill = purge.holes.underSaddles === 'none' && shutSaddles(context).every(({ weld }) => weld !== null);
      return [
        ...(purge.extent === 'dams' ? [whole] : []),
        ...plateHoles(chamber, context),
        ...widerLanceHole(chamber, context),
        ...(canDrill ? [drilled] : []),
      ];
    }
    case 'fed-high': {
      const own = (which: 'feed' | 'vent'): Change => purged(`/purge/${which}`, null, { [which]: null });
      return [
        ...(feed !== null && feed === typed.feed ? [own('feed')] : []),
        ...(vents.some((one) => one === typed.vent) ? [own('vent')] : []),
      ];
    }
    case 'bore-by-vent-holes':
      return widerHoles(purge.holes.bore, bore).map((wide) =>
        purged('/purge/holes/bore', wide, { holes: { ...purge.holes, bore: wide } }),
      );
    default:
      return [];
  }
}

/** Bore in tenths, rounded up [mm]. */
const inTenths = (width: number): number => Math.ceil(10 * width - 1e-9) / 10;

/** Bores of one hole that lets the welding flow out at 100 Pa, and of one with a lance in it [mm]. */
function ventWidths({ purge, bore }: PurgeContext, usual: number): number[] {
  const vent = ventBore({ flow: purge.weldingFlow, pressure: USUAL_PRESSURE });
  const widths = [vent, Math.hypot(vent, LANCE)].map((width) => inTenths(Math.max(usual, width)));
  return [...new Set(widths)].filter((width) => width <= bore);
}

/** A hole through each plate of a chamber that has none. */
const plateHoles = (chamber: ChamberFlow, context: PurgeContext): Change[] =>
  blindPlates(chamber, context).flatMap((plate) =>
    ventWidths(context, USUAL_PLATE_HOLE).map((value) => ({
      wayOut: { field: plateHoleField(plate), value },
      changed: () => withPlateHole(context, plate, value),
    })),
  );

/** A wider vent hole where the one that is there is too narrow for a lance. */
function widerLanceHole(chamber: ChamberFlow, context: PurgeContext): Change[] {
  const tight = tightForLance(chamber);
  if (tight?.kind !== 'hole') return [];
  const { holes } = context.purge;
  const at = Number(tight.name) - 1;
  return ventWidths(context, LEAST_LANCE_HOLE).map((bore) => ({
    wayOut: { field: `/purge/holes/toAir/${String(at)}/bore`, value: bore },
    changed: () => {
      const toAir = holes.toAir.map((one, index) => (index === at ? { ...one, bore } : one));
      return withPurge(context, { holes: { ...holes, toAir } });
    },
  }));
}

/** A stop or a caution, and the members that it is said of; none: of no chamber. */
type Told = Pick<Finding, 'code' | 'grade'> & {
  readonly members: readonly string[];
  readonly whole: readonly string[];
};

/** Codes that are said of one bore and not of all of its chamber. */
const OF_ONE_BORE: readonly FindingCode[] = ['dead-leg', 'weld-in-dead-leg', 'bore-by-vent-holes'];

/** All stops and cautions of a purge, those of the flows and dams as well. */
function toldOf(
  chambers: readonly ChamberFlow[],
  troubles: readonly (readonly Finding[])[],
  context: PurgeContext,
): Told[] {
  const others = [
    ...context.findings,
    ...damFindings(chambers, context),
    ...(context.filling === null ? [] : flowTroubles(chambers, context)),
  ];
  const said = chambers.flatMap((chamber, index) => {
    const whole = chamber.bores.flatMap(({ member }) => context.members[member]?.name ?? []);
    return (troubles[index] ?? []).map(({ code, grade, data }) => {
      const own = OF_ONE_BORE.includes(code) ? [String(data['member'] ?? '')] : whole;
      return { code, grade, members: own, whole };
    });
  });
  return [...said, ...others.map(({ code, grade }) => ({ code, grade, members: [], whole: [] }))].filter(
    ({ grade }) => grade !== 'note',
  );
}

function triedOut(context: PurgeContext): Told[] {
  const { filling, purge } = context;
  const chambers = chamberFlows(context, purge.extent);
  const troubles = chambers.map((chamber) =>
    filling === null
      ? passingTroubles(chamber, context)
      : troublesOf(lookedAt(chamber, context, filling), context, filling),
  );
  return toldOf(chambers, troubles, context);
}

const isAsBad = (one: Told, other: Pick<Finding, 'code' | 'grade'>): boolean =>
  one.code === other.code && (one.grade === 'stop' || other.grade !== 'stop');

/** What is told after a change that was not told before of the same bores, or not as badly. */
const newlyTold = (before: readonly Told[], after: readonly Told[]): Told[] =>
  after.filter(
    (one) =>
      !before.some(
        (other) =>
          isAsBad(other, one) &&
          (one.members.length === 0 || one.members.some((member) => other.members.includes(member))),
      ),
  );

/** Whether no chamber that shares a bore with this one has that finding any more, and fewer have it in all. */
function isGone(found: Finding, chamber: ChamberFlow, before: readonly Told[], after: readonly Told[]): boolean {
  const left = after.filter((one) => isAsBad(one, found));
  const own = chamber.bores.flatMap(({ member }) => chamber.members[member]?.name ?? []);
  return (
    !left.some(({ whole }) => whole.some((member) => own.includes(member))) &&
    left.length < before.filter((one) => isAsBad(one, found)).length
  );
}
