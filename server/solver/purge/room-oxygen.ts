/**
 * Oxygen in a room that argon is let into, perfectly mixed [% by volume]; layers make it worse, so none of this is a
 * permit to go in. Form of the oxygen-deficiency models of two national laboratories, and a balance of oxygen.
 * Rooms and gas in m³, flows in L/min, times in minutes.
 */

/** Oxygen in the room to begin with [%], dry air with a little moisture. */
export const ROOM_OXYGEN = 20.9;
/** Below this, air is dangerous [%]; US 29 CFR 1910.146(b), EIGA Doc 44/18. */
export const ALARM_OXYGEN = 19.5;
/** What ventilation should hold [%]: clear of the alarm; our own choice. */
export const SAFE_OXYGEN = 20.5;

/** How long a purge that was forgotten is left on [min]: a night; our own choice. */
export const NIGHT = 480;

export type Room = { readonly volume: number };
export type Release = Room & { readonly release: number };

/** Slow release into still air: 20.9 exp(−R t/V). */
export const slowRelease = ({ volume, release }: Release, minutes: number): number =>
  ROOM_OXYGEN * Math.exp((-release * minutes) / (1000 * volume));

/** Minutes of slow release until an oxygen level [%]: (V/R) ln(20.9/C). */
export const slowReleaseMinutes = ({ volume, release }: Release, oxygen: number): number =>
  ((1000 * volume) / release) * Math.log(ROOM_OXYGEN / oxygen);

/**
 * Sudden release of gas [m³] that pushes air out before it mixes: 20.9 (V − Vg)/V, not under 0. The gas makers'
 * association that has this form begins at 20.95; here it begins as every other form does, which is a little lower.
 */
export const suddenDisplaced = ({ volume }: Room, gas: number): number =>
  ROOM_OXYGEN * (Math.max(0, volume - gas) / volume);

/** Release of gas [m³] that mixes as air leaves: 20.9 exp(−Vg/V); never under the displaced form. */
export const mixedRelease = ({ volume }: Room, gas: number): number => ROOM_OXYGEN * Math.exp(-gas / volume);

export type FanWay = 'in' | 'out';
export type Ventilated = Release & { readonly fan: number };
export type Aired = Ventilated & { readonly way: FanWay };

/** A fan blows air in: 20.9/(Qv + R) [Qv + R exp(−(Qv + R) t/V)]. */
export function fanBlowingIn({ volume, release, fan }: Ventilated, minutes: number): number {
  const total = fan + release;
  return ROOM_OXYGEN * (fan / total + (release / total) * Math.exp((-total * minutes) / (1000 * volume)));
}

/** A fan draws air out, Qv > R: 20.9 [1 − (R/Qv)(1 − exp(−Qv t/V))]. */
export const fanDrawingOut = ({ volume, release, fan }: Ventilated, minutes: number): number =>
  ROOM_OXYGEN * (1 - (release / fan) * (1 - Math.exp((-fan * minutes) / (1000 * volume))));

/** Which form holds: a fan that draws out no more than the release brings no air in, so that the room is as a still one. */
export const airing = ({ release, fan, way }: Pick<Aired, 'release' | 'fan' | 'way'>): 'still' | FanWay =>
  fan === 0 || (way === 'out' && fan <= release) ? 'still' : way;

/** Oxygen [%] after so many minutes of a steady release, with whatever fan there is. */
export function oxygenAfter(room: Aired, minutes: number): number {
  const held = airing(room);
  if (held === 'still') return slowRelease(room, minutes);
  return held === 'in' ? fanBlowingIn(room, minutes) : fanDrawingOut(room, minutes);
}

/** Minutes of a steady release until an oxygen level [%]; null where a fan keeps the room above it. */
export function minutesUntil(room: Aired, oxygen: number): number | null {
  const { volume, release, fan } = room;
  const share = oxygen / ROOM_OXYGEN;
  const held = airing(room);
  if (held === 'still') return slowReleaseMinutes(room, oxygen);
  const flow = held === 'in' ? fan + release : fan;
  const left = held === 'in' ? (share * flow - fan) / release : 1 - (fan / release) * (1 - share);
  return left > 0 ? -Math.log(left) * ((1000 * volume) / flow) : null;
}

/**
 * Minutes from the end of the release at a level [%] until a higher one, C(t) = 20.9 − (20.9 − C) exp(−Qv t/V); without
 * end where there is no fan.
 */
export const recoveryMinutes = (
  { volume, fan, end }: Room & { readonly fan: number; readonly end: number },
  oxygen: number,
): number => ((1000 * volume) / fan) * Math.log((ROOM_OXYGEN - end) / (ROOM_OXYGEN - oxygen));

/**
 * Fresh air [L/min] that holds an oxygen level [%] for ever: R C/(20.9 − C) blown in, R 20.9/(20.9 − C) drawn out,
 * since what is drawn out is air and argon together.
 */
export const airToHold = (
  { release, oxygen }: { readonly release: number; readonly oxygen: number },
  way: FanWay = 'in',
): number => (release * (way === 'in' ? oxygen : ROOM_OXYGEN)) / (ROOM_OXYGEN - oxygen);
