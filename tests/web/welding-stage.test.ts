import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Kept, KeptSettings } from '../../server/job/kept.ts';
import type { Finding } from '../../server/plan/finding.ts';
import { plan } from '../../server/solver/plan.ts';
import { findingsOfChamber, standsBeside } from '../../web/state/chamber-findings.ts';
import { settingsOf, withSettings } from '../../web/state/fitting-settings.ts';
import { settingsAreIn, standsInJob, usualSettingsName } from '../../web/state/kept-settings.ts';
import { isLengthField } from '../../web/state/length-fields.ts';
import { findingsOf, stageFigure, stageOf } from '../../web/state/stages.ts';

const finding = (code: Finding['code'], field: string, data: Finding['data'] = {}): Finding => ({
  code,
  grade: 'caution',
  field,
  data,
  wayOut: null,
});

describe('the stage of welding in the index', () => {
  const ring = newJob('ring');
  const hole = (distance: number) => ({
    at: { member: 'ring', spot: 'along' as const, number: 1, distance },
    bore: 6,
  });
  const holes = { ...ring.purge.holes, toAir: [hole(100), hole(1200)] };
  const open = { ...ring, purge: { ...ring.purge, holes } };

  it('says stop where it must not be welded, else the longest wait', () => {
    expect(stageFigure('purge', ring, plan(ring))).toBe('stop');
    const planned = plan(open);
    const longest = Math.max(...(planned.purge?.chambers ?? []).map(({ printed }) => printed.time.value));
    expect(longest).toBeGreaterThan(0);
    const [, minutes = '0', , seconds = '0'] = /^(\d+) min( (\d+) s)?$/.exec(stageFigure('purge', open, planned)) ?? [];
    expect(60 * Number(minutes) + Number(seconds)).toBe(Math.ceil(longest));
  });

  it('counts what is said of welds although the field stands elsewhere', () => {
    const all = [
      finding('gap-for-wall', '/closing/gap'),
      finding('closed-chamber', '/fixing/0/plate/hole'),
      finding('fixing-no-place', '/fixing/1/at'),
      finding('dichromate-bath', '/finish/cleaning'),
    ];
    expect(findingsOf('purge', all).map(({ code }) => code)).toEqual([
      'gap-for-wall',
      'closed-chamber',
      'dichromate-bath',
    ]);
    expect(findingsOf('cameBack', all).map(({ code }) => code)).toEqual(['fixing-no-place']);
    expect([stageOf('/finish/treatment'), stageOf('/welding/butt/current')]).toEqual(['purge', 'purge']);
  });

  it('shows what is said of a chamber, of the air and of settings where these stand', () => {
    const planned = plan(open);
    const [first] = planned.purge?.chambers ?? [];
    if (first === undefined) throw new Error('A ring with two holes has a chamber.');
    const of = finding('one-opening', '/purge/vent', { chamber: first.number });
    const ofOther = finding('one-opening', '/purge/vent', { chamber: 99 });
    const general = finding('vent-pressure-high', '/purge/ventBore');
    expect(findingsOfChamber(first, [of, ofOther, general])).toEqual([of]);
    const beside = (one: Finding) => standsBeside(one, planned);
    expect([of, ofOther, general].map(beside)).toEqual([true, false, false]);
    expect(beside({ ...general, grade: 'stop' })).toBe(true);
    expect(beside(finding('room-oxygen-low', '/purge/room/fanFlow'))).toBe(true);
    expect(beside(finding('settings-not-proved', '/welding/butt/provedOn'))).toBe(true);
    const nothing = { purge: null, welding: null };
    expect(standsBeside(of, nothing)).toBe(false);
    expect(standsBeside(finding('settings-not-proved', '/welding/butt/provedOn'), nothing)).toBe(false);
  });
});

describe('a way out in words', () => {
  it('knows the lengths of welding and gas from plain numbers', () => {
    const lengths = ['/purge/holes/bore', '/welding/pad/cup', '/welding/sleeve/wall', '/fixing/2/plate/hole'];
    expect(lengths.filter((field) => !isLengthField(field))).toEqual([]);
    const plain = ['/purge/up/z', '/purge/feed/hole', '/purge/meter/0/chamber', '/welding/butt/travelSpeed'];
    expect(plain.filter(isLengthField)).toEqual([]);
  });
});

describe('settings that the shop keeps', () => {
  const proved = newJob('hoop');
  const job = {
    ...proved,
    welding: { ...proved.welding, butt: { ...proved.welding.butt, current: 57, provedOn: ' test piece 7 ' } },
  };
  const keep = (document: KeptSettings): Kept<'settings'> => ({ id: 'a', revision: 1, savedAt: '', document });

  it('are named after the weld, its tube and what they were proved on', () => {
    expect(usualSettingsName(job, 'butt')).toBe('butt 38.1 × 1.65 316L, test piece 7');
    const inches = { ...job, units: { ...job.units, length: 'inch' as const } };
    expect(usualSettingsName(inches, 'butt')).toMatch(/^butt 1 1\/2 × /);
    const long = { ...job, welding: { ...job.welding, butt: { ...job.welding.butt, provedOn: 'x'.repeat(80) } } };
    expect(usualSettingsName(long, 'butt')).toHaveLength(60);
  });

  it('are known again in a job that took them, on the same tube and on another', () => {
    const kept = keep(settingsOf(job, 'butt', 'mine'));
    const other = newJob('ring');
    expect(settingsAreIn(kept, other, 'butt')).toBe(false);
    const taken = withSettings(other, 'butt', kept.document);
    expect([settingsAreIn(kept, taken, 'butt'), standsInJob(kept, taken, 'butt')]).toEqual([true, true]);
    expect(settingsAreIn(kept, taken, 'saddle')).toBe(false);
    const thicker = { ...taken, tube: { ...taken.tube, wall: 2 } };
    expect([settingsAreIn(kept, thicker, 'butt'), standsInJob(kept, thicker, 'butt')]).toEqual([true, false]);
  });
});
