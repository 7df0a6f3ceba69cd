/**
 * Oxygen in a room that argon is let into, perfectly mixed [% by volume]; layers make it worse, so none of this is a
 * permit to go in. Form of the oxygen-deficiency models of two national laboratories, and a balance of oxygen.
 * Rooms and gas in m³, flows in L/min, times in minutes.
 */

/** Oxygen in the room to begin with [%], dry air with a little moisture. */
export const ROOM_OXYGEN = 20.9;
/** Oxygen of the air that is displaced [%]; form of a gas makers' association. */
const DRY_AIR_OXYGEN = 20.95;
/** Below this, air is dangerous [%]; US 29 CFR 1910.146(b), EIGA Doc 44/18. */
export const ALARM_OXYGEN = 19.5;
/** What ventilation should hold [%]: clear of the alarm; our own choice. */
export const SAFE_OXYGEN = 20.5;

export type Room = { readonly volume: number };
export type Release = Room & { readonly release: number };

/** Slow release into still air: 20.9 exp(−R t/V). */
export const slowRelease = ({ volume, release }: Release, minutes: number): number =>
  ROOM_OXYGEN * Math.exp((-release * minutes) / (1000 * volume));

/** Minutes of slow release until an oxygen level [%]: (V/R) ln(20.9/C). */
export const slowReleaseMinutes = ({ volume, release }: Release, oxygen: number): number =>
  ((1000 * volume) / release) * Math.log(ROOM_OXYGEN / oxygen);

/** Sudden release of gas [m³] that pushes air out before it mixes: 20.95 (V − Vg)/V, not under 0. */
export const suddenDisplaced = ({ volume }: Room, gas: number): number =>
  (DRY_AIR_OXYGEN * Math.max(0, volume - gas)) / volume;

/** Release of gas [m³] that mixes as air leaves: 20.9 exp(−Vg/V). */
export const mixedRelease = ({ volume }: Room, gas: number): number => ROOM_OXYGEN * Math.exp(-gas / volume);

export type Ventilated = Release & { readonly fan: number };

/** A fan blows air in: 20.9/(Qv + R) [Qv + R exp(−(Qv + R) t/V)]. */
export function fanBlowingIn({ volume, release, fan }: Ventilated, minutes: number): number {
  const total = fan + release;
  return (ROOM_OXYGEN / total) * (fan + release * Math.exp((-total * minutes) / (1000 * volume)));
}

/** A fan draws air out, Qv > R: 20.9 [1 − (R/Qv)(1 − exp(−Qv t/V))]. */
export const fanDrawingOut = ({ volume, release, fan }: Ventilated, minutes: number): number =>
  ROOM_OXYGEN * (1 - (release / fan) * (1 - Math.exp((-fan * minutes) / (1000 * volume))));

/** Minutes until an oxygen level [%] with a fan that blows in; null where it settles above that level. */
export function minutesUntil({ volume, release, fan }: Ventilated, oxygen: number): number | null {
  const total = fan + release;
  const left = ((oxygen / ROOM_OXYGEN) * total - fan) / release;
  return left > 0 ? -Math.log(left) * ((1000 * volume) / total) : null;
}

/** After the release has stopped at a level [%]: 20.9 − (20.9 − C) exp(−Qv t/V). */
export const afterRelease = (
  { volume, fan, end }: Room & { readonly fan: number; readonly end: number },
  minutes: number,
): number => ROOM_OXYGEN - (ROOM_OXYGEN - end) * Math.exp((-fan * minutes) / (1000 * volume));

/** Fresh air [L/min] that holds an oxygen level [%]: R C/(20.9 − C). */
export const airToHold = ({ release, oxygen }: { readonly release: number; readonly oxygen: number }): number =>
  (release * oxygen) / (ROOM_OXYGEN - oxygen);
