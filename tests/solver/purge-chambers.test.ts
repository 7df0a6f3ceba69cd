import { describe, expect, it } from 'vitest';
import { CROSSBAR, MAIN, onto, purged, SPLICE, tube } from './purge-frames.ts';

const codes = ({ findings }: ReturnType<typeof purged>) => findings.map(({ code, grade }) => `${code} ${grade}`);
const OPEN = ['argon-caution note'];

describe('whole bores', () => {
  it('a spliced tube is one chamber with the printed volume and times', () => {
    const { purge, setups, findings } = purged([MAIN], SPLICE, { prePurgeFlow: 5 });
    const [chamber] = purge?.chambers ?? [];
    expect(setups).toBe(1);
    expect(findings.map(({ code }) => code)).toEqual(['argon-caution']);
    // 34.8 mm × 3 m at 5 L/min to 50 ppm, computed beforehand
    expect(chamber?.volume.value.toFixed(4)).toBe('2.8534');
    expect(chamber?.plug.time.value.toFixed(1)).toBe('34.2');
    expect(chamber?.wellMixed.time.value.toFixed(0)).toBe('287');
    expect(chamber?.wellMixed.volumes.value.toFixed(3)).toBe('8.381');
    expect(chamber?.printed).toEqual(chamber?.wellMixed);
    expect(chamber?.feed).toMatchObject({ member: 'main', station: 0, point: { x: 0 } });
    expect(chamber?.vent).toMatchObject({ member: 'main', station: 3000, point: { x: 3000 } });
    expect(chamber?.plugs.map(({ end }) => end)).toEqual(['start', 'finish']);
  });

  it('the long-tube estimate lies between plug and well mixed, and is printed where it is chosen', () => {
    const { purge } = purged([MAIN], SPLICE, { model: 'long-tube' });
    const [chamber] = purge?.chambers ?? [];
    const [plug, long, mixed] = [chamber?.plug, chamber?.longTube, chamber?.wellMixed].map((one) => one?.time.value);
    expect(plug).toBeLessThan(long!);
    expect(long).toBeLessThan(mixed!);
    // the closed form without the mixed share at the feed: 1.973 volumes
    expect(chamber?.longTube?.volumes.value).toBeGreaterThan(1.973);
    expect(chamber?.printed).toEqual(chamber?.longTube);
  });

  it('a turbulent flow has no long-tube estimate, says so, and prints well mixed', () => {
    const made = purged([MAIN], SPLICE, { model: 'long-tube', prePurgeFlow: 60 });
    const [chamber] = made.purge?.chambers ?? [];
    expect(chamber?.longTube).toBeNull();
    expect(chamber?.printed).toEqual(chamber?.wellMixed);
    const said = made.findings.find(({ code }) => code === 'purge-flow-turbulent');
    // 2300 is reached at 51 L/min
    expect(Math.round(Number(said?.wayOut?.value))).toBe(51);
    const mended = purged([MAIN], SPLICE, { prePurgeFlow: Number(said?.wayOut?.value) });
    expect(codes(mended)).toEqual(OPEN);
  });

  it('a saddle connects no bores, and heats both', () => {
    const made = purged(
      [MAIN, CROSSBAR],
      [
        { member: 'crossbar', station: 0 },
        { member: 'crossbar', station: 800 },
      ],
    );
    expect(made.purge?.chambers.map(({ stretches, joints }) => [stretches[0]?.member, joints])).toEqual([
      ['main', [1, 2]],
      ['crossbar', [1, 2]],
    ]);
    expect(made.setups).toBe(2);
    expect(codes(made)).toEqual(['closed-chamber stop', ...OPEN]);
    const [closed] = made.findings;
    expect(closed?.data).toEqual({ member: 'crossbar', openEnds: 0 });
    expect(closed?.wayOut).toEqual({ field: '/purge/ventHoles', value: 'coped-ends' });
    const vented = purged(
      [MAIN, CROSSBAR],
      [
        { member: 'crossbar', station: 0 },
        { member: 'crossbar', station: 800 },
      ],
      { ventHoles: 'coped-ends' },
    );
    expect(codes(vented)).toEqual(['bore-by-vent-holes caution', ...OPEN]);
    expect(vented.findings[0]?.data).toEqual({ member: 'crossbar', holes: 2 });
  });

  it('a member that no weld heats is not filled', () => {
    const made = purged([MAIN, CROSSBAR], SPLICE);
    expect(made.purge?.chambers.map(({ feed }) => feed.member)).toEqual(['main']);
    expect(codes(made)).toEqual(OPEN);
  });

  it('a closed bore that the joint cuts is open there until it is welded', () => {
    const made = purged([MAIN, CROSSBAR], [{ member: 'crossbar', station: 400 }]);
    expect(codes(made)).toEqual(['closed-chamber caution', ...OPEN]);
    expect(made.findings[0]?.data).toEqual({ member: 'crossbar', openEnds: 0, joint: 1 });
  });

  it('a tube with one open end is fed there', () => {
    const leg = tube('leg', 600, { start: onto(500) });
    const made = purged([MAIN, leg], [{ member: 'leg', station: 0 }]);
    const chamber = made.purge?.chambers.find(({ feed }) => feed.member === 'leg');
    expect([chamber?.feed.station, chamber?.vent.station]).toEqual([600, 0]);
    expect(codes(made)).toEqual(['closed-chamber caution', ...OPEN]);
  });

  it('gas runs both ways round a ring, from its closing weld to the far side', () => {
    const ring = tube('ring', 2000, { closed: true, start: { kind: 'closed' }, finish: { kind: 'closed' } });
    const made = purged([ring], [{ member: 'ring', station: 0 }]);
    const [chamber] = made.purge?.chambers ?? [];
    expect([chamber?.feed.station, chamber?.vent.station]).toEqual([0, 1000]);
    expect(chamber?.plugs).toEqual([]);
    expect(codes(made)).toEqual(['closed-chamber caution', ...OPEN]);
    const cutOpen = purged([tube('half', 1000)], [{ member: 'half', station: 500 }], { prePurgeFlow: 5 });
    // half the way at half the flow takes the same volumes
    expect(chamber?.longTube?.volumes.value).toBeCloseTo(cutOpen.purge?.chambers[0]?.longTube?.volumes.value ?? 0, 12);
  });

  it('nothing to weld is nothing to fill', () => {
    expect(purged([MAIN, CROSSBAR], [])).toEqual({ purge: null, setups: 0, findings: [] });
  });
});

describe('dams', () => {
  const dams = { extent: 'dams' as const, model: 'long-tube' as const };

  it('one pocket a joint, well mixed only', () => {
    const made = purged([MAIN], [...SPLICE, { member: 'main', station: 2500 }], dams);
    expect(made.setups).toBe(2);
    expect(made.purge?.chambers[0]?.stretches).toEqual([{ member: 'main', from: 1350, to: 1650 }]);
    expect(made.purge?.chambers[0]?.dams.map(({ station }) => station)).toEqual([1350, 1650]);
    expect(made.purge?.chambers[0]?.length.value).toBe(300);
    expect(made.purge?.chambers[0]?.longTube).toBeNull();
    expect(made.purge?.chambers[0]?.printed.volumes.value.toFixed(3)).toBe('8.381');
    expect(codes(made)).toEqual(OPEN);
  });

  it('a dam beyond an open end becomes a plug', () => {
    const made = purged([MAIN], [{ member: 'main', station: 60 }], dams);
    const [chamber] = made.purge?.chambers ?? [];
    expect(chamber?.stretches).toEqual([{ member: 'main', from: 0, to: 210 }]);
    expect(chamber?.dams.map(({ station }) => station)).toEqual([210]);
    expect(chamber?.plugs.map(({ end }) => end)).toEqual(['start']);
    expect(made.findings[0]).toMatchObject({ code: 'dam-beyond-end', data: { joint: 1, value: 150, high: 60 } });
  });

  it('at a saddle the hose goes through to the closed end', () => {
    const leg = tube('leg', 600, { finish: onto(500) });
    const made = purged([MAIN, leg], [{ member: 'leg', station: 600 }], dams);
    expect(made.purge?.chambers.map(({ feed, vent }) => [feed.station, vent.station])).toEqual([
      [600, 450],
      [350, 650],
    ]);
    expect(codes(made)).toEqual(OPEN);
  });

  it('a pocket across the closing weld of a ring is in two stretches', () => {
    const ring = tube('ring', 2000, { closed: true, start: { kind: 'closed' }, finish: { kind: 'closed' } });
    const [chamber] = purged([ring], [{ member: 'ring', station: 0 }], dams).purge?.chambers ?? [];
    expect(chamber?.stretches).toEqual([
      { member: 'ring', from: 1850, to: 2000 },
      { member: 'ring', from: 0, to: 150 },
    ]);
    expect(chamber?.length.value).toBe(300);
  });

  it('near dams get hot: the heat of the weld halves with double the distance', () => {
    const rise = (damDistance: number) => {
      const near = purged([MAIN], SPLICE, { ...dams, damDistance }).findings.find(
        ({ code }) => code === 'dam-near-weld',
      );
      return Number(near?.data['rise']);
    };
    // 0.6 · 10.5 V · 66 A / 1.5 mm/s = 277.2 J/mm; 240 J/mm gives 178 K at 50 mm
    expect(Math.abs(rise(50) - (178.2 * 277.2) / 240)).toBeLessThan(1);
    expect(Math.abs(rise(25) - 2 * rise(50))).toBeLessThan(2);
    expect(rise(100)).toBeNaN();
  });
});
