import { describe, expect, it } from 'vitest';
import type { Units } from '../../server/job/job.ts';
import { letteredRisks } from '../../server/language/lettered-risks.ts';
import { saidWords } from '../../server/language/said-words.ts';
import type { Finding } from '../../server/plan/finding.ts';
import { reasonsOfWay } from '../../web/state/way-reasons.ts';
import { way } from '../sheets/fixture-way.ts';

const mm: Units = { length: 'mm', fraction: 16 };

describe('why a way is not possible', () => {
  const rebend = way('rebend', [], null, { possible: false, reasons: ['rebend-over-machine'] });
  const finding = (data: Finding['data']): Finding => ({
    code: 'rebend-over-machine',
    grade: 'stop',
    field: '/machine/dies',
    data,
    wayOut: null,
  });

  it('is said with the numbers of the finding about it', () => {
    const said = reasonsOfWay(rebend, [finding({ way: 'splice-rebend', value: 1 }), finding({ value: 195 })], mm);
    expect(said).toHaveLength(1);
    expect(said[0]).toContain('195');
  });

  it('is said in general where no finding is about it', () => {
    const [said] = reasonsOfWay(rebend, [finding({ way: 'splice-rebend', value: 77 })], mm);
    expect(said).not.toContain('77');
    expect(said?.length).toBeGreaterThan(20);
  });

  it('is said once, and never left out', () => {
    expect(reasonsOfWay({ ...rebend, reasons: ['no-such-thing', 'no-such-thing'] }, [], mm)).toEqual(['no such thing']);
    expect(reasonsOfWay({ ...rebend, reasons: [] }, [], mm)).toEqual([]);
  });
});

describe('what can go wrong', () => {
  it('has one letter for each thing, whichever way it belongs to', () => {
    const ways = [
      way('leave', [], null, { risks: ['x', 'y'] }),
      way('rebend', [], null, { risks: ['y', 'z'] }),
      way('splice-fewest', [], null, { risks: ['w'], possible: false }),
      way('new-frame', [], null, { risks: [] }),
    ];
    expect(letteredRisks(ways)).toEqual([
      { letter: 'a', risk: 'x', ways: ['leave'] },
      { letter: 'b', risk: 'y', ways: ['leave', 'rebend'] },
      { letter: 'c', risk: 'z', ways: ['rebend'] },
    ]);
    const many = way('leave', [], null, { risks: Array.from({ length: 28 }, (_, index) => String(index)) });
    expect(letteredRisks([many]).at(-1)?.letter).toBe('ab');
  });
});

describe('a step of the work', () => {
  it('is said in the unit of the job, without what it has no data for', () => {
    const data = { joint: 0, member: 'hoop', end: 'start', value: 25.4 };
    expect(saidWords({ key: 'step.trim-feet', data }, mm)).toBe('Cut the foot back at hoop, start, by 25.4 mm.');
    expect(saidWords({ key: 'step.trim-feet', data: { joint: 0 } }, mm)).toBe('Cut the foot back.');
    expect(saidWords({ key: 'step.trim-feet', data }, { length: 'inch', fraction: 16 })).toContain('by 1 in');
  });

  it('is said by its own name where there are no words for it yet', () => {
    expect(saidWords({ key: 'step.sing-a-song', data: {} }, mm)).toBe('sing a song');
  });
});
