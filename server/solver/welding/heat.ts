/** Amperes for a millimetre of wall, closed butt in tube with or without a little filler: common practice, no source. */
export const CURRENT_FOR_WALL = { low: 30, high: 40 } as const;
/** Arc voltage in argon [V], 9 to 12: common practice, no source. */
const ARC_VOLTAGE = 10.5;
/** Share of the arc's energy that enters the metal: TIG in EN 1011-1, a convention of that standard. */
const TIG_FACTOR = 0.6;

/** Heat put in for each length [J/mm], Q = k U I/v at the upper current for the wall [mm] and a travel speed [mm/s]. */
export const heatInput = ({ wall, travelSpeed }: { readonly wall: number; readonly travelSpeed: number }): number =>
  (TIG_FACTOR * ARC_VOLTAGE * CURRENT_FOR_WALL.high * wall) / travelSpeed;
