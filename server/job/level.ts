import { Type, type Static } from 'typebox';
import { Coordinate, MONTH_AND_DAY, PositiveLength, ShortText, Vector } from './quantities.ts';

const Accuracy = (title: string) => Type.Number({ minimum: 0.001, maximum: 10, title, unit: 'deg' });

/** One's own ± of a reading; null: that of all of its kind. */
const own = <Of extends ReturnType<typeof Accuracy>>(accuracy: Of) =>
  Type.Union([accuracy, Type.Null()], { title: 'accuracy' });

/**
 * incline: what a level showed along a line of the structure, positive where the line rises in its direction.
 * height: how high a mark of the structure stands over anything that is level now (water, a hose level, a laser).
 * Directions and marks in the structure's own axes.
 */
export const LevelReading = Type.Union(
  [
    Type.Object(
      {
        reading: Type.Literal('incline'),
        along: Vector('along'),
        /** null: not read yet. */
        angle: Type.Union(
          [Type.Number({ minimum: -180, maximum: 180, title: 'the level shows', unit: 'deg' }), Type.Null()],
          { title: 'the level shows' },
        ),
        accuracy: own(Accuracy('accuracy')),
      },
      { title: 'level reading', additionalProperties: false },
    ),
    Type.Object(
      {
        reading: Type.Literal('height'),
        at: Vector('mark'),
        /** null: not read yet. */
        height: Type.Union([Coordinate('height over what is level'), Type.Null()], {
          title: 'height over what is level',
        }),
        accuracy: own(PositiveLength(500, 'accuracy')),
      },
      { title: 'height of a mark', additionalProperties: false },
    ),
  ],
  { title: 'level reading' },
);
export type LevelReading = Static<typeof LevelReading>;

/** A time that a clock shows. */
const TIME = '([01]\\d|2[0-3]):[0-5]\\d';

/** Readings that were taken together, while the structure lay still. */
export const LevelSet = Type.Object(
  {
    /** Day and time of a clock on the wall, 2026-11-26T09:40; empty: not noted. */
    taken: Type.String({ pattern: `^(\\d{4}-${MONTH_AND_DAY}T${TIME})?$`, title: 'taken at' }),
    note: ShortText('note', 200),
    readings: Type.Array(LevelReading, { maxItems: 20, title: 'level readings' }),
  },
  { title: 'set of level readings', additionalProperties: false },
);
export type LevelSet = Static<typeof LevelSet>;

/** How the structure lies; the last set that is read is how it lies now, none: as its own axes have it. */
export const Level = Type.Object(
  {
    sets: Type.Array(LevelSet, { maxItems: 12, title: 'sets of level readings' }),
    angleAccuracy: Accuracy('accuracy of the level'),
    heightAccuracy: PositiveLength(500, 'accuracy of heights'),
    /** How long readings are believed. */
    goodFor: Type.Number({ minimum: 0.05, maximum: 8760, title: 'good for', unit: 'h' }),
  },
  { title: 'level', additionalProperties: false },
);
export type Level = Static<typeof Level>;
