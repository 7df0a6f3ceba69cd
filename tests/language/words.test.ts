import { describe, expect, it } from 'vitest';
import { Job } from '../../server/job/job.ts';
import type { Units } from '../../server/job/job.ts';
import { fields } from '../../server/language/en/fields.ts';
import { findings } from '../../server/language/en/findings.ts';
import { unitWords } from '../../server/language/en/units.ts';
import { fieldLabel, fieldName, patternOf } from '../../server/language/field-name.ts';
import { describeFinding } from '../../server/language/finding-words.ts';
import { hasWords, words, wordsOf } from '../../server/language/words.ts';
import { WAY_KEYS } from '../../server/plan/correction.ts';
import { Unit } from '../../server/plan/figure.ts';
import { FINDING_CODES } from '../../server/plan/finding-codes.ts';
import type { Finding } from '../../server/plan/finding.ts';
import { QUOTE_LINES } from '../../server/plan/quote.ts';
import { SLIP_KEYS } from '../../server/plan/slip.ts';

const mm: Units = { length: 'mm', fraction: 16 };

describe('findings in words', () => {
  it('has words for every code and for no other', () => {
    expect(Object.keys(findings).sort()).toEqual([...FINDING_CODES].sort());
  });

  it('names the field, the value, the allowed range and the way out', () => {
    const finding: Finding = {
      code: 'leg-short-for-bend',
      grade: 'stop',
      field: '/frame/leftLeg/value',
      data: { value: 50, low: 114.3 },
      wayOut: null,
    };
    expect(describeFinding(finding, mm)).toBe(
      'Left leg: The leg is too short for its corner bend. It is 50.0 mm; at least 114.3 mm. Make the leg longer.',
    );
    expect(describeFinding(finding, { length: 'inch', fraction: 16 })).toContain('at least 4 1/2 in');
  });

  const inch: Units = { length: 'inch', fraction: 16 };
  const said = (code: Finding['code'], field: string, data: Finding['data'], units: Units): string =>
    describeFinding({ code, grade: 'caution', field, data, wayOut: null }, units);
  it('says small lengths of inch jobs to a thousandth, and nothing that is something as nothing', () => {
    const gap = { value: 0.5, low: 0, high: 1, wall: 1.65 };
    expect(said('gap-for-wall', '/closing/gap', gap, inch)).toContain(
      'on a wall of 0.065 in. The gap is 0.020 in; at least 0 in, at most 0.039 in.',
    );
    expect(said('shrinkage-differs', '/closing/shrinkage', { value: 0.03, high: 1.5875 }, inch)).toContain(
      'It is typed as 0.0012 in; at most 1/16 in.',
    );
  });
  it('tells a value from the limit that it misses by little, in both units', () => {
    const leg = { value: 114.28, low: 114.3 };
    expect(said('leg-short-for-bend', '/frame/leftLeg/value', leg, inch)).toContain('4.499 in; at least 4 1/2 in');
    expect(said('leg-short-for-bend', '/frame/leftLeg/value', leg, mm)).toContain('114.28 mm; at least 114.3 mm');
  });
  it('says what is measured where a sleeve does not go in', () => {
    const bent = { weld: '2', bow: 0.32, play: 0.3, value: 76.2, high: 73.5 };
    expect(said('sleeve-does-not-fit', '/welding/sleeve/length', bent, mm)).toBe(
      'Sleeve length: The sleeve does not go in at weld 2: along it the tube bows away by 0.32 mm, and its play is ' +
        '0.30 mm. It is 76.2 mm; at most 73.5 mm. Take a shorter or a thinner one, or weld without a sleeve.',
    );
    const met = { weld: '2A', other: '2B', value: 76.2, high: 60 };
    expect(said('sleeve-does-not-fit', '/welding/sleeve/length', met, mm)).toContain(
      'at weld 2A: it meets the sleeve of weld 2B. It is 76.2 mm; at most 60.0 mm.',
    );
  });

  it('leaves out what a finding has no data for, and no braces are ever shown', () => {
    for (const code of FINDING_CODES) {
      for (const data of [{}, { value: 1, low: 2, high: 3, member: 'hoop', onto: 'hoop', way: 'leave', bend: 2 }]) {
        const said = describeFinding({ code, grade: 'note', field: '', data, wayOut: null }, mm);
        expect(said).not.toMatch(/[{}[\]]|undefined/);
        expect(said.length).toBeGreaterThan(20);
      }
    }
  });
});

/** Every pointer pattern of a schema's leaves. */
function leaves(schema: unknown, pattern: string): string[] {
  const node = schema as {
    anyOf?: unknown[];
    properties?: Record<string, unknown>;
    items?: unknown;
    const?: unknown;
    patternProperties?: unknown;
  };
  if (node.anyOf !== undefined) return node.anyOf.flatMap((branch) => leaves(branch, pattern));
  if (node.properties !== undefined) {
    return Object.entries(node.properties).flatMap(([name, inner]) => leaves(inner, `${pattern}/${name}`));
  }
  if (node.items !== undefined) return leaves(node.items, `${pattern}/#`);
  return node.patternProperties === undefined ? [pattern] : [];
}

describe('names of fields', () => {
  it('has a name for every leaf of the job', () => {
    const unnamed = [...new Set(leaves(Job, '').map(patternOf))].filter(
      (pattern) => !Object.hasOwn(fields, pattern) && !['/format', '/version'].includes(pattern),
    );
    expect(unnamed).toEqual([]);
    // and none is left over from a field that is no more: what is named is a leaf, or stands above one
    const patterns = leaves(Job, '').map(patternOf);
    const left = Object.keys(fields).filter(
      (field) => !patterns.some((pattern) => pattern === field || pattern.startsWith(`${field}/`)),
    );
    expect(left).toEqual([]);
  });

  it('tells one of many apart', () => {
    expect(fieldName('/tube/wall')).toBe('wall');
    expect(fieldName('/frame/innerCrossbars/1/fromFoot/value')).toBe('inner crossbar 2: from the left foot');
    expect(fieldName('/cameBack/readings/3/value')).toBe('reading 4');
    expect(fieldName('/cameBack/readings/3/accuracy')).toBe('reading 4: read to ±');
    expect(fieldName('/fixing/0/lands/x')).toBe('fixing point 1: must land at x');
    expect(fieldName('/fixing/1')).toBe('fixing point 2');
    expect(fieldName('/frame/nothing/like/this')).toBe('frame');
    expect(fieldName('/purge/holes/toAir/1/bore')).toBe('vent hole 2: bore');
    expect(fieldName('/purge/holes/except/0/end')).toBe('excepted saddle end 1: at its');
    expect(fieldName('/purge/meter/2/oxygen')).toBe('meter reading 3: oxygen on the meter');
    expect(fieldName('/welding/order/4/first')).toBe('weld in order 5: first quarter');
    expect(fieldName('/fixing/0/plate/hole')).toBe('fixing point 1: hole through the plate');
  });

  it('tells prices, bars, pieces and times apart by their numbers', () => {
    expect(fieldName('/rates/tubes/1/perMetre/value')).toBe('price of tube 2: each metre');
    expect(fieldName('/rates/labour/weld/each/value')).toBe('welding beside arc time: each weld');
    expect(fieldName('/rates/labour/bottle/hour/since')).toBe('changing bottles, each hour: since');
    expect(fieldName('/rates/tax/example')).toBe('tax: only an example');
    expect(fieldName('/stock/joints/0/station')).toBe('joint between bars 1: stands at');
    expect(fieldName('/stock/layout/bars/2/pieces/0/length')).toBe('bar to be cut 3, piece 1: length');
    expect(fieldName('/quote/quantities/1')).toBe('how many frames 2');
    expect(fieldName('/quote/offered/0')).toBe('way offered 1');
    expect(fieldName('/log/4/minutes')).toBe('time taken 5: the work took');
  });

  it('tells settings apart by the kind of weld that they are for, and calls them alike beside the field', () => {
    expect(['butt', 'saddle', 'pad'].map((form) => fieldName(`/welding/${form}/current`))).toEqual([
      'butt: current',
      'saddle: current',
      'pad: current',
    ]);
    expect(fieldLabel('/welding/saddle/current')).toBe('current');
    expect(fieldName('/welding/saddle')).toBe('saddle');
    expect(fieldName('/welding/pull')).toBe('pull of one joint');
  });
});

describe('the catalogue', () => {
  it('fills placeholders', () => {
    expect(words('revisions.number', { number: 3 })).toBe('Revision 3');
    expect(wordsOf('check', 'crossbar-from-foot', { index: 2 })).toBe('inner crossbar 2 from the left foot');
    expect(wordsOf('check', 'some-new-size')).toBe('some new size');
  });

  it('has words for every way, slip, quote line and unit', () => {
    for (const key of WAY_KEYS) expect(hasWords(`way.${key}`), key).toBe(true);
    for (const key of SLIP_KEYS) expect(hasWords(`slip.${key}`) && hasWords(`tell.${key}`), key).toBe(true);
    for (const key of QUOTE_LINES) expect(hasWords(`quote.${key}`), key).toBe(true);
    expect(Object.keys(unitWords).sort()).toEqual([...Unit.enum].sort());
  });
});
