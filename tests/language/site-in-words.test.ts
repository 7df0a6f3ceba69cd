import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { describeFinding } from '../../server/language/finding-words.ts';
import { formatFigure, formatPlusMinus } from '../../server/language/quantity-format.ts';
import { gapGrade } from '../../server/language/site-rules.ts';
import { turnWay } from '../../server/language/turn-way.ts';
import { uncutLegs } from '../../server/language/uncut-legs.ts';
import type { Units } from '../../server/job/job.ts';
import type { Figure, Unit } from '../../server/plan/figure.ts';
import type { Finding } from '../../server/plan/finding.ts';
import { plan } from '../../server/solver/plan.ts';

const inch: Units = { length: 'inch', fraction: 16 };
const mm: Units = { length: 'mm', fraction: 16 };

const figure = (value: number, unit: Unit, plusMinus?: number): Figure => ({
  value,
  unit,
  band: plusMinus === undefined ? null : { plusMinus, from: [] },
  working: { formula: 'v', inputs: [], sources: [] },
});

describe('quantities of a site', () => {
  it('has leg for a degree in the unit of length of the job', () => {
    expect(formatFigure(figure(6.703, 'mm/deg'), mm)).toBe('6.70 mm/°');
    expect(formatFigure(figure(6.703, 'mm/deg'), inch)).toBe('0.264 in/°');
  });

  it('tells no ± as a fraction of an inch, in a finding neither', () => {
    expect([formatPlusMinus(25.4, 'mm', inch), formatPlusMinus(1.2, 'mm', mm)]).toEqual(['1.000 in', '1.20 mm']);
    const data = { name: 'port leg', cut: 762, band: 12.7, doubt: 'foot', which: 'port leg', part: 12, value: 12.7 };
    const again: Finding = { code: 'leg-measure-again', grade: 'caution', field: '/site/legs/0', data, wayOut: null };
    const said = describeFinding(again, inch);
    expect(said).toContain('± 0.500 in; the foot of port leg accounts for 0.472 in of it.');
    expect(said).toContain('The ± is 0.500 in');
  });
});

describe('rules that page and sheets share', () => {
  it('call a gap struck or under only beyond rounding', () => {
    const asked = figure(20, 'mm');
    const grades = [-0.01, -1e-9, 19.99, 20 - 1e-9, 20].map((gap) => gapGrade(figure(gap, 'mm'), asked));
    expect(grades).toEqual(['struck', 'under', 'under', 'enough', 'enough']);
  });

  it('leave the way of a turn open where its ± does', () => {
    expect(turnWay(figure(0.15, 'deg', 0.2))).toBe('inLine');
    expect(turnWay(figure(0.15, 'deg', 0.1))).toBe('clockwise');
    expect(turnWay(figure(-179.9, 'deg', 0.2))).toBe('half');
    expect(turnWay(figure(-12, 'deg'))).toBe('anticlockwise');
  });
});

describe('legs that cannot be cut', () => {
  const job = landingStage();
  const whole = plan(job);

  it('are told with what stops them, in the order of the job', () => {
    const legs = whole.site!.legs.filter(({ number }) => number === 2);
    const stop: Finding = {
      code: 'leg-no-length',
      grade: 'stop',
      field: '/site/legs/0',
      data: { name: 'starboard leg', value: 0 },
      wayOut: null,
    };
    const [uncut, ...rest] = uncutLegs({ ...whole, site: { ...whole.site!, legs }, findings: [stop] }, job);
    expect(rest).toEqual([]);
    expect(uncut).toMatchObject({ number: 1, name: 'starboard leg' });
    expect(uncut!.why).toContain('The foot and the head of this leg are one place');
  });

  it('are none where every leg has its plan', () => {
    expect(uncutLegs(whole, job)).toEqual([]);
  });
});
