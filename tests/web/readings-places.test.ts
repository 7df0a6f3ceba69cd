import { describe, expect, it } from 'vitest';
import type { Reading } from '../../server/job/came-back.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { TubePlace } from '../../server/job/tube-place.ts';
import { parseJob } from '../../server/job/validate.ts';
import { plan } from '../../server/solver/plan.ts';
import { freshFixing } from '../../web/state/fixings.ts';
import { freshDiagonals, freshReading, kindOf, READING_KINDS } from '../../web/state/fresh-readings.ts';
import { pastePoints } from '../../web/state/pasted-points.ts';
import { freshCameBack, READINGS, readingsOf, withReadings } from '../../web/state/readings.ts';
import { fixingReversed, placeReversed, readingReversed, type TurnedTube } from '../../web/state/reversed-places.ts';
import { cornersInOrder, hasPlace, placeGroups, placeWords } from '../../web/state/tube-places.ts';
import { tubesOf } from '../../web/state/tubes.ts';

const point = (x: number, y: number, z: number) => ({ x, y, z, radius: null });
const points = [point(0, 0, 0), point(0, 0, 700), point(600, 0, 700), point(600, 500, 700), point(600, 500, 200)];
const run: Job = { ...newJob('run'), frame: { shape: 'run', points }, cameBack: freshCameBack };
const tubes = tubesOf(plan({ ...run, cameBack: null }));
const hoop = tubesOf(plan(newJob('hoop')));
const ring = tubesOf(plan(newJob('ring')));
const place = (spot: TubePlace['spot'], number = 1, member = 'run'): TubePlace => ({
  member,
  spot,
  number,
  distance: 0,
});

describe('places on a tube', () => {
  it('are its ends, corners, bends and pieces, each by its own count', () => {
    const [tube] = tubes;
    expect(tube).toMatchObject({ name: 'run', closed: false, bends: 3 });
    expect(tube!.pieces.map(({ kind, number }) => `${kind} ${String(number)}`)).toEqual([
      'straight 1',
      'die 1',
      'straight 2',
      'die 2',
      'straight 3',
      'die 3',
      'straight 4',
    ]);
    const named = placeGroups(tube!).flatMap(({ options }) => options);
    expect(named).toHaveLength(2 + 3 + 6 + 7 + 1);
    expect(named.every((one) => hasPlace(one, tube!))).toBe(true);
    expect(new Set(named.map((one) => one.words)).size).toBe(named.length);
    expect(placeWords({ spot: 'middle', number: 4 }, tube)).toBe('middle of bend 2');
    expect(hasPlace(place('corner', 4), tube!)).toBe(false);
    expect(hasPlace(place('middle', 8), tube!)).toBe(false);
  });

  it('of a hoop are left and right, and a ring has a weld and no finish', () => {
    const saidOf = (of: typeof hoop) => placeGroups(of[0]!).flatMap(({ options }) => options.map((one) => one.words));
    expect(saidOf(hoop).slice(0, 4)).toEqual(['left foot', 'right foot', 'left corner', 'right corner']);
    expect(saidOf(ring).slice(0, 2)).toEqual(['closing weld', 'corner 1']);
    expect(hasPlace(place('finish'), ring[0]!)).toBe(false);
  });

  it('follow each other along the tube', () => {
    expect(cornersInOrder(tubes)).toEqual([
      place('start'),
      place('corner', 1),
      place('corner', 2),
      place('corner', 3),
      place('finish'),
    ]);
    expect(cornersInOrder(ring).map(({ number }) => number)).toEqual([1, 2, 3, 4]);
  });
});

describe('a fresh reading', () => {
  it('of every kind can be held by a job, and waits for its value', () => {
    for (const kind of READING_KINDS) {
      const fresh = freshReading(kind, tubes, []);
      expect(fresh === null ? '' : kindOf(fresh)).toBe(kind);
      expect(parseJob(withReadings(run, [fresh!])).ok).toBe(true);
    }
    expect(READING_KINDS.map((kind) => freshReading(kind, [], []))).toEqual(READING_KINDS.map(() => null));
  });

  it('goes on to what is not measured yet', () => {
    const measured: Reading[] = [];
    for (let count = 0; count < 4; count += 1) measured.push(freshReading('rotation', tubes, measured)!);
    // the turn before the first bend is none; after the last one it begins anew
    expect(measured.map((one) => (one.reading === 'turn' ? one.piece : 0))).toEqual([4, 6, 4, 4]);
    const spots: Reading[] = [];
    for (let count = 0; count < 3; count += 1) spots.push(freshReading('point', tubes, spots)!);
    expect(spots.map((one) => (one.reading === 'point' ? one.at : null))).toEqual(cornersInOrder(tubes).slice(0, 3));
  });

  it('has nothing to measure on a straight tube that has no bend', () => {
    const straight = tubesOf(plan(newJob('straight')));
    const none = READING_KINDS.filter((kind) => freshReading(kind, straight, []) === null);
    expect(none).toEqual(['radius', 'angle', 'rotation']);
  });

  it('across both diagonals is a pair that is equal where the frame is square', () => {
    const across = (of: typeof hoop) =>
      freshDiagonals(of).map((one) =>
        (one.reading === 'distance' ? [one.from, one.to] : []).map(({ spot, number }) => `${spot} ${String(number)}`),
      );
    expect(across(hoop)).toEqual([
      ['start 1', 'corner 2'],
      ['corner 1', 'finish 1'],
    ]);
    expect(across(ring)).toEqual([
      ['corner 1', 'corner 3'],
      ['corner 2', 'corner 4'],
    ]);
    expect(across(tubes)).toEqual([]);
  });

  it('of what it is fastened to takes one free end after the other', () => {
    const first = freshFixing(hoop, [])!;
    const second = freshFixing(hoop, [first])!;
    expect([first.at.spot, second.at.spot]).toEqual(['start', 'finish']);
    expect(parseJob({ ...newJob('hoop'), fixing: [first, second] }).ok).toBe(true);
  });
});

describe('pasted points', () => {
  const places = cornersInOrder(tubes);
  const put = (text: string, job = run, at = places) => {
    const pasted = pastePoints(job, text, at);
    if (!pasted.ok) throw new Error(pasted.said);
    return pasted.job;
  };
  const coordinates = (job: Job) =>
    readingsOf(job).map((one) => (one.reading === 'point' ? [one.at.spot, one.at.number, one.x, one.y, one.z] : []));

  it('go to ends and corners in order, however they are parted', () => {
    const want = [
      ['start', 1, 0, 0, 1],
      ['corner', 1, 0.5, -2, 701],
    ];
    for (const text of [
      '0\t0\t1\n0.5\t-2\t701',
      '0, 0, 1\n0.5, -2, 701',
      '0 0 1\n 0.5  -2 701 \n',
      'z;x;y\n1;0;0\n701;0.5;-2',
    ])
      expect(coordinates(put(text))).toEqual(want);
  });

  it('keep a text that says more than the number, at its own reading', () => {
    const level = freshReading('level', tubes, [])!;
    const job = put('0\t0\t27 1/2 in', withReadings(run, [level]));
    expect(readingsOf(job)[1]).toMatchObject({ reading: 'point', z: 27.5 * 25.4 });
    expect(job.asTyped).toEqual({ [`${READINGS}/1/z`]: '27 1/2 in' });
  });

  it('take the place of a point that is there already', () => {
    const job = put('9 9 9', put('1 2 3\n4 5 6'), places.slice(1));
    expect(coordinates(job)).toEqual([
      ['start', 1, 1, 2, 3],
      ['corner', 1, 9, 9, 9],
    ]);
  });

  it('are put nowhere where one cannot be read or there are too many', () => {
    for (const text of ['1 2 3\n4 x 6', '1 2 3\n'.repeat(6), '', '1\t2\t3\t4'])
      expect(pastePoints(run, text, places)).toMatchObject({ ok: false });
    expect(pastePoints(run, '1 2 3\n4 x 6', places)).toMatchObject({
      said: expect.stringContaining('Row 2') as string,
    });
    expect(pastePoints(run, '1 2 3\n'.repeat(6), places)).toMatchObject({
      said: expect.stringContaining('6') as string,
    });
  });
});

describe('a tube counted from its other end', () => {
  const tube: TurnedTube = {
    member: 'run',
    index: 1,
    closed: false,
    bends: 3,
    arcs: [false, true, false, true, false, true, false],
    length: 2000,
  };
  const angle = (what: 'angle' | 'rotation', piece: number): Reading => ({
    reading: 'turn',
    member: 'run',
    piece,
    what,
    value: 30,
    accuracy: null,
  });

  it('keeps its places where they are', () => {
    const turned = (one: TubePlace) => placeReversed(one, tube);
    expect(turned(place('start'))).toEqual(place('finish'));
    expect(turned(place('corner', 1))).toEqual(place('corner', 3));
    expect(turned(place('bend-start', 1))).toEqual(place('bend-end', 3));
    expect(turned(place('middle', 2))).toEqual(place('middle', 6));
    expect(turned({ ...place('along'), distance: 300 })).toEqual({ ...place('along'), distance: 1700 });
    expect(turned(place('start', 1, 'other'))).toEqual(place('start', 1, 'other'));
    for (const one of [place('start'), place('corner', 2), place('bend-end', 3), place('middle', 7)])
      expect(turned(turned(one))).toEqual(one);
  });

  it('keeps its readings what they are', () => {
    expect(readingReversed(angle('angle', 2), tube)).toEqual(angle('angle', 6));
    // between bends 1 and 2 it stands at bend 2 from one end, and at bend 1 from the other, which is then the later
    expect(readingReversed(angle('rotation', 4), tube)).toEqual(angle('rotation', 6));
    const level: Reading = { reading: 'level', at: place('middle', 1), value: 2, accuracy: null };
    expect(readingReversed(level, tube)).toEqual({ ...level, at: place('middle', 7), value: -2 });
    const bevel: Reading = {
      reading: 'bevel',
      from: place('start'),
      to: place('start', 1, 'other'),
      value: 30,
      accuracy: null,
    };
    expect(readingReversed(bevel, tube)).toMatchObject({ from: place('finish'), value: 150 });
    expect(readingReversed({ ...bevel, to: place('finish') }, tube)).toMatchObject({ to: place('start'), value: 30 });
    const size: Reading = {
      reading: 'size',
      check: 'first-leg',
      index: 0,
      reference: 'outside',
      value: 9,
      accuracy: null,
    };
    expect(readingReversed(size, tube)).toEqual({ ...size, check: 'last-leg' });
    for (const one of [angle('rotation', 4), level, bevel, size])
      expect(readingReversed(readingReversed(one, tube), tube)).toEqual(one);
  });

  it('keeps what it is fastened by where it is', () => {
    const foot = { ...freshFixing(tubesOf(plan(newJob('hoop'))), [])!, at: place('start') };
    expect(fixingReversed(foot, tube)).toEqual({ ...foot, at: place('finish') });
  });
});
