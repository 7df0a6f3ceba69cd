import { describe, expect, it } from 'vitest';
import { inputName } from '../../server/language/en/inputs.ts';
import { formatFigure } from '../../server/language/quantity-format.ts';
import { hasWords } from '../../server/language/words.ts';
import type { RebendRow, Way } from '../../server/plan/correction.ts';
import type { Figure } from '../../server/plan/figure.ts';
import type { Joint } from '../../server/plan/joint.ts';
import { daysOpen, daysOut } from '../../server/solver/correction/days-out.ts';
import { risksOf, type RiskContext } from '../../server/solver/correction/way-risks.ts';
import { faceAt, jointOf, made, wayOf } from './made-up-ways.ts';

const calm: RiskContext = {
  outsideDiameter: 40,
  kerf: 1.2,
  tolerance: 4,
  open: false,
  slipKnown: true,
  saddlesRefitted: 0,
};
const noWeld = { welds: made(0, 'count') };

const turned = (turn: number, made_: 'die' | 'rolled' = 'die'): RebendRow => ({
  member: 'hoop',
  made: made_,
  bend: 1,
  turn: made(turn, 'deg'),
  from: made(90, 'deg'),
  to: made(90 + turn, 'deg'),
  radiusFrom: null,
  radiusTo: null,
});
const jointAt = (from: number, to: number, given: Partial<Joint> = {}) =>
  jointOf('hoop', faceAt(from), faceAt(to), given);

describe('what can go wrong', () => {
  const cases: [risk: string, way: Way, context: Partial<RiskContext>, without: Way, plain?: Partial<RiskContext>][] = [
    [
      'opening-wrinkles',
      wayOf('rebend', { ...noWeld, rebends: [turned(-2)] }),
      {},
      wayOf('rebend', { ...noWeld, rebends: [turned(2)] }),
    ],
    [
      'work-hardened',
      wayOf('rebend', { ...noWeld, rebends: [turned(2)] }),
      {},
      wayOf('rebend', { ...noWeld, rebends: [turned(2, 'rolled')] }),
    ],
    ['same-slip-again', wayOf('new-frame'), { slipKnown: false }, wayOf('new-frame')],
    [
      'tape-doubt',
      wayOf('leave', { ...noWeld, cornerMisfit: made(1, 'mm', 4.1) }),
      {},
      wayOf('leave', { ...noWeld, cornerMisfit: made(1, 'mm', 4) }),
    ],
    ['weld-pull', wayOf('splice-fewest'), { open: true }, wayOf('splice-fewest')],
    [
      'kink-shows',
      wayOf('splice-fewest', { largestKink: made(1.01, 'deg') }),
      {},
      wayOf('splice-fewest', { largestKink: made(1, 'deg') }),
    ],
    [
      'step-to-grind',
      wayOf('splice-fewest', { joints: [jointAt(300, 360, { hiLoGrade: 'standard' })] }),
      {},
      wayOf('splice-fewest', { joints: [jointAt(300, 360, { hiLoGrade: 'practice' })] }),
    ],
    [
      'joint-near-bend',
      wayOf('splice-fewest', {
        joints: [jointAt(300, 360, { range: { from: 315, to: 900 }, bounds: { from: 'bend', to: 'end' } })],
      }),
      {},
      wayOf('splice-fewest', {
        joints: [jointAt(300, 360, { range: { from: 315, to: 900 }, bounds: { from: 'end', to: 'bend' } })],
      }),
    ],
    [
      'joint-near-bend',
      wayOf('splice-fewest', { joints: [jointAt(300, 360, { on: 'die' })] }),
      {},
      wayOf('splice-fewest', { joints: [jointAt(300, 360, { on: 'rolled' })] }),
    ],
    ['saddle-refit', wayOf('rebend', noWeld), { saddlesRefitted: 2 }, wayOf('rebend', noWeld)],
    [
      'narrow-slug',
      wayOf('splice-fewest', { joints: [jointAt(300, 302.3)] }),
      {},
      wayOf('splice-fewest', { joints: [jointAt(300, 302.5)] }),
    ],
    [
      'narrow-slug',
      wayOf('splice-fewest', { joints: [jointAt(300, 302)] }),
      {},
      wayOf('splice-fewest', { joints: [jointAt(300, 302, { kind: 'dart' })] }),
    ],
    ['root-sugars', wayOf('splice-fewest'), {}, wayOf('rebend', noWeld)],
    [
      'packing-comes-loose',
      wayOf('leave', { ...noWeld, packing: [{ member: 'hoop', end: 'start', height: made(12) }] }),
      {},
      wayOf('leave', noWeld),
    ],
  ];

  it.each(cases)('%s', (risk, way, context, without) => {
    expect(risksOf(way, { ...calm, ...context })).toContain(risk);
    expect(risksOf(without, calm)).not.toContain(risk);
    expect(hasWords(`risk.${risk}`)).toBe(true);
  });

  it('is nothing known where nothing is bent, welded or packed', () => {
    expect(risksOf(wayOf('leave', noWeld), { ...calm, open: true, slipKnown: false })).toEqual([]);
  });
});

describe('days until the frame is there again', () => {
  const minutes = made(240, 'min');
  const days = (way: Way, daysAtBender: number | null, bending: 'own' | 'outside' = 'outside') =>
    daysOut(way, { minutes, bending, daysAtBender });
  const told = (figure: Figure | null) => inputName(figure!.working.inputs[0]!.name);
  const letIn = (radius: number | null) => ({
    length: made(80),
    cutLength: made(82),
    radius: radius === null ? null : made(radius),
    angle: null,
    tiltA: made(0, 'deg'),
    tiltB: made(0, 'deg'),
    templates: [],
  });

  it('is the work in days of eight hours where nobody bends', () => {
    const figure = days(wayOf('splice-fewest', { joints: [jointAt(300, 360, { letIn: letIn(null) })] }), null);
    expect(figure).toMatchObject({ value: 0.5, unit: 'd' });
    expect(formatFigure(figure!, { length: 'mm', fraction: 16 })).toBe('0.50 d');
  });

  it.each([
    ['new-frame', wayOf('new-frame')],
    ['bends turned', wayOf('rebend', { rebends: [turned(1)] })],
    ['a let-in piece that is bent', wayOf('splice-fewest', { joints: [jointAt(300, 360, { letIn: letIn(2400) })] })],
  ])('has the days at the bender in it: %s', (_, way) => {
    expect(days(way, 10)?.value).toBe(10.5);
    expect(told(days(way, 10))).toBe('days at the bender');
    expect(days(way, null)).toBeNull();
    // what the shop bends itself is nowhere else, whatever was typed for a bender
    for (const typed of [null, 10]) {
      expect(days(way, typed, 'own')?.value).toBe(0.5);
      expect(told(days(way, typed, 'own'))).toContain('the shop bends itself');
    }
  });

  it('stands open where the minutes do', () => {
    expect(daysOut(wayOf('splice-fewest'), { minutes: null, bending: 'own', daysAtBender: 3 })).toBeNull();
  });

  it('are asked for where a bender outside is needed and nobody has said how long he takes', () => {
    const asked = (ways: readonly Way[], bending: 'own' | 'outside', daysAtBender: number | null) =>
      daysOpen(ways, { bending, daysAtBender });
    const both = [wayOf('splice-fewest'), wayOf('new-frame')];
    expect(asked(both, 'outside', null)).toEqual([
      { code: 'days-at-bender-open', grade: 'note', field: '/closing/daysAtBender', data: {}, wayOut: null },
    ]);
    expect(asked(both, 'outside', 0)).toEqual([]);
    expect(asked(both, 'own', null)).toEqual([]);
    expect(asked([both[0]!, wayOf('new-frame', { possible: false })], 'outside', null)).toEqual([]);
  });
});
