/** Positions: ISO 6947 with the American codes of its annex B; the boundaries between them are our own. */
import { describe, expect, it } from 'vitest';
import type { Vector3 } from '../../server/solver/geometry/vector.ts';
import { weldPosition } from '../../server/solver/welding/weld-position.ts';
import { BRANCH, jobWith, line, MAIN, onto, padAt, SADDLE, spliceAt, tube, welded } from '../solver/welding-frames.ts';

const UP: Vector3 = { x: 0, y: 0, z: 1 };
const climbing = (degrees: number): Vector3 => ({
  x: Math.cos((degrees * Math.PI) / 180),
  y: 0,
  z: Math.sin((degrees * Math.PI) / 180),
});

describe('a butt in a tube that is held still', () => {
  it.each([
    [0, 'PH', '5G'],
    [22, 'PH', '5G'],
    [23, 'H-L045', '6G'],
    [45, 'H-L045', '6G'],
    [67, 'H-L045', '6G'],
    [68, 'PC', '2G'],
    [90, 'PC', '2G'],
  ])('%d° off level: %s, %s, whichever way the tube runs', (degrees, code, american) => {
    for (const rise of [degrees, -degrees]) {
      const position = weldPosition('butt', climbing(rise), UP);
      expect(position).toMatchObject({ code, american });
      expect(position.steep.value).toBeCloseTo(degrees, 10);
    }
  });
});

describe('a branch or a post on a plate', () => {
  it.each([
    [90, 'PB', '2F'],
    [46, 'PB', '2F'],
    [44, 'PH', '5F'],
    [0, 'PH', '5F'],
    [-44, 'PH', '5F'],
    [-46, 'PD', '4F'],
    [-90, 'PD', '4F'],
  ])('rises by %d°: %s, %s', (rise, code, american) => {
    for (const form of ['saddle', 'pad'] as const)
      expect(weldPosition(form, climbing(rise), UP)).toMatchObject({ code, american });
  });
});

describe('as the frame is held', () => {
  const job = jobWith({ more: { fixing: [padAt('finish', { member: 'branch', hole: 8 })] } });
  const held = (up: Vector3, members = [MAIN, BRANCH]) =>
    welded({ ...job, purge: { ...job.purge, up } }, { members, places: [spliceAt(1500), SADDLE] }).welding.welds.map(
      ({ position }) => position.code,
    );
  it('a branch that stands on its main, and one that hangs from it', () => {
    // its plate is above it then, and it hangs from that
    expect(held({ x: 0, y: 0, z: 5 })).toEqual(['PH', 'PB', 'PD']);
    expect(held({ x: 0, y: 0, z: -5 })).toEqual(['PH', 'PD', 'PB']);
  });
  it('everything level, and the main upright', () => {
    expect(held({ x: 0, y: 1, z: 0 })).toEqual(['PH', 'PH', 'PH']);
    expect(held({ x: 1, y: 0, z: 0 })).toEqual(['PC', 'PH', 'PH']);
  });
  it('a saddle at the finish of its branch looks from its own end', () => {
    const far = tube('branch', [line(800)], { ends: { finish: onto() }, along: { x: 0, y: 0, z: -1 } });
    const { welding } = welded(jobWith({}), { members: [MAIN, far], places: [{ ...SADDLE, station: 800 }] });
    expect(welding.welds[0]!.position.code).toBe('PB');
  });
  it('no direction is taken as flat on the bench', () => {
    for (const none of [0, 5e-324, -1e-12]) expect(held({ x: none, y: 0, z: 0 })).toEqual(held({ x: 0, y: 0, z: 1 }));
  });
});
