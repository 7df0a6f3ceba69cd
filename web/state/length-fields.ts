import { patternOf } from '../../server/language/field-name.ts';

/** Fields that hold a length: told by the last part of their pointer, where the same word never means another kind. */
const LENGTH_NAMES: ReadonlySet<string> = new Set([
  'outsideDiameter',
  'wall',
  'dieRadius',
  'tubeDiameter',
  'gripLength',
  'pressureDieLength',
  'bedBelow',
  'dieHeight',
  'clampReach',
  'markAccuracy',
  'leastStraight',
  'trimAllowance',
  'stretchPerBend',
  'measuredRadius',
  'scribedBefore',
  'scribedAfter',
  'value',
  'radius',
  'length',
  'x',
  'y',
  'z',
  'tapeAccuracy',
  'gap',
  'kerf',
  'shrinkage',
  'tolerance',
  'diameter',
  'clearance',
  'distance',
  'paperThickness',
  'damDistance',
  'ventBore',
  'station',
  'fillerDiameter',
  'bore',
  'electrode',
  'cup',
  'land',
  'thickness',
]);

/** Directions are plain numbers although they have x, y and z; the hole of a plate has a bore, that of a feed a number. */
export const isLengthField = (pointer: string): boolean => {
  const pattern = patternOf(pointer);
  if (/\/(direction|normal|axis|up)\/[xyz]$/.test(pattern)) return false;
  if (pattern.endsWith('/plate/hole')) return true;
  return LENGTH_NAMES.has(pattern.slice(pattern.lastIndexOf('/') + 1));
};
