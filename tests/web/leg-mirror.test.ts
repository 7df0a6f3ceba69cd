import { describe, expect, it } from 'vitest';
import { mirrorBetween, mirroredDirection, mirroredPoint } from '../../web/state/leg-mirror.ts';

describe('a mirror between two places', () => {
  const across = mirrorBetween({ x: 0, y: -400, z: 0 }, { x: 0, y: 400, z: 0 })!;

  it('takes a point to the other side and back', () => {
    const point = { x: 12.3, y: -420, z: -610 };
    expect(mirroredPoint(point, across)).toEqual({ x: 12.3, y: 420, z: -610 });
    expect(mirroredPoint(mirroredPoint(point, across), across)).toEqual(point);
    expect(mirrorBetween(point, point)).toBeNull();
  });

  it('turns a lean across it and leaves what names something real', () => {
    expect(mirroredDirection({ by: 'lean', ahead: 3, port: -12 }, across)).toEqual({ by: 'lean', ahead: 3, port: 12 });
    expect(mirroredDirection({ by: 'axes', vector: { x: 0, y: 1, z: 2 } }, across)).toEqual({
      by: 'axes',
      vector: { x: 0, y: -1, z: 2 },
    });
    const thing = { by: 'thing' as const, thing: 'wall' };
    expect(mirroredDirection(thing, across)).toBe(thing);
    const zero = mirroredDirection({ by: 'lean', ahead: 0, port: 0 }, across);
    expect(zero.by === 'lean' && Object.is(zero.port, 0)).toBe(true);
  });
});
