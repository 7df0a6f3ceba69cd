import { WAY_KEYS } from '../../server/job/closing.ts';
import type { CorrectionPlan, Way } from '../../server/plan/correction.ts';
import type { Joint } from '../../server/plan/joint.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { figure } from './fixture-figure.ts';
import { joint, letIn } from './fixture-joint.ts';
import { misfitPicture, way } from './fixture-way.ts';
import { holeWrap, type FaceSpec } from './fixture-wrap.ts';
import { makePlan } from './fixture.ts';

const correctionOf = (plan: Plan): CorrectionPlan => {
  if (plan.correction === null) throw new Error('the made-up plan has a correction');
  return plan.correction;
};

/** The made-up plan with other ways, the first of which is taken. */
export function planOf(ways: Way[], change: Partial<CorrectionPlan> = {}, diameter = 38.1): Plan {
  const plan = makePlan(diameter);
  const key = ways[0]!.key;
  return {
    ...plan,
    correction: {
      ...correctionOf(plan),
      ways,
      recommended: key,
      chosen: key,
      picture: misfitPicture(ways),
      ...change,
    },
  };
}

type Faces = { readonly a: FaceSpec; readonly b: FaceSpec };

/** Both faces of a wedge of 8 degrees that closes to nothing at a generator. */
const wedge = (station: number, narrow: number, diameter: number): Faces => {
  const a = { station, offSquare: 4, longest: narrow };
  return { a, b: { ...a, station: station + diameter * Math.tan((4 * Math.PI) / 180) } };
};

const square = (station: number, length: number): Faces => {
  const a = { station, offSquare: 0, longest: 0 };
  return { a, b: { ...a, station: station + length } };
};

/** One joint of each kind, all in the hoop: a slug out of a long leg, a wedge, a dart, new tube let in, and a turned one. */
export function jointsOfEachKind(diameter = 38.1): Joint[] {
  const piece = letIn(4, 'hoop', diameter);
  return [
    joint({ number: 1, member: 'hoop', ...square(120, 260) }, diameter),
    joint(
      {
        number: 2,
        member: 'hoop',
        kind: 'wedge',
        ...wedge(700, 210, diameter),
        scrap: figure(4.1, 'mm'),
        scrapShort: figure(0, 'mm'),
      },
      diameter,
    ),
    joint(
      {
        number: 3,
        member: 'hoop',
        kind: 'dart',
        ...wedge(1000, 180, diameter),
        scrap: figure(4.1, 'mm'),
        scrapShort: figure(0, 'mm'),
      },
      diameter,
    ),
    joint(
      { number: 4, member: 'hoop', kind: 'let-in', letIn: piece, ...square(1300, 0.0001), scrap: figure(0, 'mm') },
      diameter,
    ),
    joint({ number: 5, member: 'crossbar 1', twist: figure(-3.2, 'deg'), ...square(400, 12) }, diameter),
  ];
}

/** A way with a joint of each kind, bends turned again, a crown rolled again, feet cut back and packed. */
export const wayOfEverything = (diameter = 38.1): Way =>
  way('splice-rebend', jointsOfEachKind(diameter), 43000, {
    rebends: [
      {
        member: 'hoop',
        made: 'die',
        bend: 2,
        turn: figure(-0.8, 'deg'),
        from: figure(84, 'deg'),
        to: figure(83.2, 'deg'),
        radiusFrom: null,
        radiusTo: null,
      },
      {
        member: 'hoop',
        made: 'rolled',
        bend: 1,
        turn: figure(1.4, 'deg'),
        from: figure(18, 'deg'),
        to: figure(19.4, 'deg'),
        radiusFrom: figure(2400, 'mm'),
        radiusTo: figure(2226.8, 'mm'),
      },
    ],
    trims: [{ member: 'hoop', end: 'finish', length: figure(11.5, 'mm') }],
    packing: [{ member: 'hoop', end: 'start', height: figure(6.2, 'mm') }],
  });

/** All eight ways, all possible, with long lists of what can go wrong and of what would change the recommendation. */
export function planOfEight(diameter = 38.1): Plan {
  const joints = jointsOfEachKind(diameter);
  const ways = WAY_KEYS.map((key, index) =>
    way(key, key === 'leave' || key === 'new-frame' ? [] : joints, 21500 + 900 * index, {
      risks: Array.from({ length: 3 }, (_, risk) => `made-up-risk-number-${String((index + risk) % 12)}-of-a-dozen`),
      fixingMisfit: figure(31.4 - index, 'mm', 12.5),
      cost: index === 2 ? null : figure(2150000 + index, 'minor'),
    }),
  );
  const change = (index: number): CorrectionPlan['wouldChange'][number] => ({
    key: `change.made-up-${'and-long-'.repeat(8)}${String(index)}`,
    data: {},
  });
  return planOf(ways, {
    recommended: 'splice-fewest',
    chosen: 'splice-fairest',
    wouldChange: Array.from({ length: 7 }, (_, index) => change(index)),
  });
}

/** The same with more to say than one page holds. */
export function planWithManyNotes(): Plan {
  const plan = planOfEight();
  const correction = correctionOf(plan);
  const wouldChange = Array.from({ length: 40 }, (_, index) => ({
    key: `change.made-up-${'and-long-'.repeat(8)}${String(index)}`,
    data: {},
  }));
  return { ...plan, correction: { ...correction, wouldChange } };
}

/** The same ways with twelve members in the picture. */
export function planOfTwelveMembers(): Plan {
  const plan = planOfEight();
  const { picture, ...rest } = correctionOf(plan);
  if (picture === null) throw new Error('the made-up plan has a picture');
  const several = <T>(lines: T[]): T[] => Array.from({ length: 6 }, () => lines).flat();
  return {
    ...plan,
    correction: {
      ...rest,
      picture: {
        ...picture,
        wanted: several(picture.wanted),
        ways: picture.ways.map((one) => ({ ...one, lines: several(one.lines) })),
      },
    },
  };
}

/** Seven ways that are not possible, each with a reason, and a new frame. */
export function planOfNone(): Plan {
  const ways = WAY_KEYS.map((key) => {
    const possible = key === 'new-frame';
    return way(key, [], null, { possible, reasons: possible ? [] : ['width-under-tube'], unbeaten: possible });
  });
  return planOf(ways, { recommended: 'new-frame', chosen: 'new-frame' });
}

/** A new frame whose main has a hole. */
export function planWithHole(diameter = 60.3): Plan {
  const plan = planOf([way('new-frame', [], null)], {}, diameter);
  const { frame } = plan;
  if (frame === null) throw new Error('the made-up plan has a frame');
  const templates = [holeWrap('hoop', diameter, 38.1)];
  return {
    ...plan,
    frame: {
      ...frame,
      members: frame.members.map((member) => (member.name === 'hoop' ? { ...member, templates } : member)),
    },
  };
}
