import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { problemsOf } from '../../server/job/validate.ts';
import { Job } from '../../server/job/job.ts';
import { SHAPES } from '../../web/state/fresh-rows.ts';
import { changedFields, merged } from '../../web/state/merge.ts';
import { ownJob } from '../../web/state/own-job.ts';
import { differences, valueAt, withValue } from '../../web/state/pointer.ts';
import { rowsAt, withoutRow, withRowAdded, withRowMoved } from '../../web/state/rows.ts';
import { fieldState, withChoice, withText, withUnitOfLength, type FieldForm } from '../../web/state/typed-text.ts';

const length: FieldForm = { kind: 'length', mayBeEmpty: false };
const radius: FieldForm = { kind: 'length', mayBeEmpty: true };
const run = newJob('run');
const hoop = newJob('hoop');

describe('a value at its pointer', () => {
  it('is read, and set without touching what is not on the way', () => {
    expect(valueAt(hoop, '/frame/width/value')).toBe(900);
    expect(valueAt(hoop, '/frame/nothing/value')).toBeUndefined();
    const next = withValue(hoop, '/frame/width/value', 950);
    expect(valueAt(next, '/frame/width/value')).toBe(950);
    expect(valueAt(hoop, '/frame/width/value')).toBe(900);
    expect(next.machine).toBe(hoop.machine);
    expect(differences(hoop, next)).toEqual(['/frame/width/value']);
  });

  it('gives back the same data after any two sets that undo each other', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('/tube/wall', '/machine/leastStraight', '/purge/room/volume'),
        fc.double(),
        (at, value) => {
          const back = withValue(withValue(hoop, at, value), at, valueAt(hoop, at));
          expect(back).toEqual(hoop);
        },
      ),
    );
  });
});

describe('a text in a field', () => {
  it('stays as typed, with its value beside it in the other unit', () => {
    const next = withText(hoop, '/tube/outsideDiameter', '1-1/2 in', length);
    expect(next.tube.outsideDiameter).toBe(38.1);
    expect(fieldState(length, '/tube/outsideDiameter', next, undefined)).toEqual({
      text: '1-1/2 in',
      understood: '38.1 mm',
      trouble: '',
    });
  });

  it('stays where it cannot be read, and says which value the plan keeps', () => {
    const next = withText(hoop, '/frame/width/value', '9oo', length);
    expect(valueAt(next, '/frame/width/value')).toBe(900);
    const state = fieldState(length, '/frame/width/value', next, undefined);
    expect(state.text).toBe('9oo');
    expect(state.trouble).toContain('900 mm');
  });

  it('is marked after a reload where the value was refused', () => {
    const typed = withText(hoop, '/tube/wall', '900', length);
    const putBack = withValue(typed, '/tube/wall', 1.65);
    expect(fieldState(length, '/tube/wall', putBack, undefined).trouble).toContain('1.65 mm');
    expect(fieldState(length, '/tube/wall', putBack, 'at most 40').trouble).toContain('at most 40');
  });

  it('may be empty where nothing is an answer', () => {
    const typed = withText(run, '/frame/points/1/radius', '60', radius);
    expect(valueAt(typed, '/frame/points/1/radius')).toBe(60);
    expect(valueAt(withText(typed, '/frame/points/1/radius', ' ', radius), '/frame/points/1/radius')).toBeNull();
  });

  it('is forgotten where its value is chosen', () => {
    const typed = withText(hoop, '/frame/width/value', '37 1/2 in', length);
    expect(withChoice(typed, '/frame/width', { value: 1, reference: 'outside' }).asTyped).toEqual({});
  });

  it('never changes a length by changing the unit', () => {
    const typed = withText(
      withText(withText(hoop, '/frame/width/value', '950', length), '/tube/wall', '0.065 in', length),
      '/machine/leastStraight',
      'what',
      length,
    );
    const inches = withUnitOfLength(typed, 'inch');
    expect(changedFields(typed, inches)).toEqual(['/units/length']);
    expect(inches.asTyped).toEqual({ '/tube/wall': '0.065 in', '/machine/leastStraight': 'what' });
    expect(fieldState(length, '/frame/width/value', inches, undefined)).toEqual({
      text: '37.40157',
      understood: '950 mm',
      trouble: '',
    });
  });
});

describe('rows of a table', () => {
  const list = '/frame/points';
  const typed = withText(run, `${list}/1/x`, '24 in', length);

  it('take their texts along when they move or go', () => {
    expect(withRowMoved(typed, list, 1, -1).asTyped).toEqual({ [`${list}/0/x`]: '24 in' });
    expect(withoutRow(typed, list, 0).asTyped).toEqual({ [`${list}/0/x`]: '24 in' });
    expect(withoutRow(typed, list, 1).asTyped).toEqual({});
    expect(withRowMoved(typed, list, 0, -1)).toBe(typed);
  });

  it('are where they were after moving down and up again', () => {
    expect(withRowMoved(withRowMoved(typed, list, 0, 1), list, 1, -1)).toEqual(typed);
    const added = withRowAdded(typed, list, { x: 0, y: 0, z: 0, radius: null });
    expect(withoutRow(added, list, rowsAt(added, list).length - 1)).toEqual(typed);
  });
});

describe('two people on one job', () => {
  const mine = withText(hoop, '/frame/width/value', '910', length);
  const theirs = withText(withText(hoop, '/tube/wall', '2', length), '/frame/width/value', '920', length);

  it('keep what each changed, mine where both did', () => {
    const both = merged(hoop, mine, theirs);
    expect([both.tube.wall, valueAt(both, '/frame/width/value')]).toEqual([2, 910]);
    expect(both.asTyped).toEqual({ '/tube/wall': '2', '/frame/width/value': '910' });
  });

  it('lose nothing when only one of them changed something', () => {
    expect(merged(hoop, hoop, theirs)).toEqual(theirs);
    expect(merged(hoop, mine, hoop)).toEqual(mine);
  });

  it('make a job that fits the schema although one chose another shape', () => {
    const ring = withChoice(hoop, '/frame', newJob('ring').frame);
    for (const job of [merged(hoop, mine, ring), merged(hoop, ring, mine)]) {
      expect(problemsOf(Job, job)).toEqual([]);
    }
  });
});

describe('start your own', () => {
  const sizes = {
    outsideDiameter: 42.4,
    wall: 1.65,
    dieRadius: 100,
    across: 800,
    along: 500,
    length: 'inch' as const,
  };

  it.each(SHAPES)('makes a job that fits the schema: %s', (shape) => {
    const job = ownJob(newJob(shape), sizes);
    expect(problemsOf(Job, job)).toEqual([]);
    expect([job.invented, job.title, job.frame.shape]).toEqual([false, '', shape]);
    expect(job.machine.dies).toMatchObject([{ radius: 100, tubeDiameter: 42.4 }]);
  });
});
