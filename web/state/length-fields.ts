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
  'endTrim',
  'leastRemnant',
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
  'height',
  'heightAccuracy',
  'depth',
  'plate',
  'takes',
  'adds',
  'travel',
]);

/** What stands with each point and its distances, in which 'ahead' is no angle as it is in a direction. */
const POINT_FOUND = /^\/site\/points\/#\/at\/(?:ahead|port|up|accuracy|distances\/#\/accuracy)$/;

/** Where a cylinder of the site begins and ends along its axis; a swing has the same words and is an angle. */
const THING_ENDS = /^\/site\/things\/#\/shape\/ends\/(?:from|to)$/;

/** Directions are plain numbers although they have x, y and z; the hole of a plate has a bore, that of a feed a number. */
export const isLengthField = (pointer: string): boolean => {
  const pattern = patternOf(pointer);
  if (/\/(direction|normal|axis|up|along|vector|placing\/x|placing\/y)\/[xyz]$/.test(pattern)) return false;
  if (POINT_FOUND.test(pattern) || THING_ENDS.test(pattern)) return true;
  if (pattern.endsWith('/plate/hole')) return true;
  return LENGTH_NAMES.has(pattern.slice(pattern.lastIndexOf('/') + 1));
};
