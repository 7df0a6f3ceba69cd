/** Room between a line and a body at a place along the line [mm]; below 0 inside the body. */
export type Clearance = (along: number) => number;

/** A contact is found to within this [mm]: rounding. */
const FOUND = 1e-9;

/** No contact takes so many steps once it is shut in: each at least halves what is left every other time. */
const STEPS = 80;

/**
 * Where a line that comes from `far` towards a body first meets it [mm along the line]. Room changes no faster than the
 * place along the line, so that a step as long as the room skips nothing (sphere tracing: Hart 1996, The Visual Computer
 * 12, 527; from memory). Places that only graze the body by less than `least`²/8 over its radius are passed over.
 *
 * @param range where it comes from, how far it goes [mm], and its shortest step
 * @returns undefined where the line is in the body already at `far`, or passes it
 */
export function firstContact(
  clearance: Clearance,
  { far, near, least }: { readonly far: number; readonly near: number; readonly least: number },
): number | undefined {
  let at = far;
  let room = clearance(at);
  if (!(room > 0)) return undefined;
  while (at > near) {
    const next = at - Math.max(room, least);
    const there = clearance(next);
    if (there <= 0) return contactBetween(clearance, { at: next, room: there }, { at, room });
    [at, room] = [next, there];
  }
  return undefined;
}

type Known = { readonly at: number; readonly room: number };

/** The contact between a place in the body and one outside, by false position, the end that stays halved (Illinois). */
function contactBetween(clearance: Clearance, inside: Known, outside: Known): number {
  let [low, high] = [inside, outside];
  let stayed = 0;
  for (let step = 0; step < STEPS; step += 1) {
    const at = low.at - (low.room * (high.at - low.at)) / (high.room - low.room);
    const room = clearance(at);
    if (Math.abs(room) < FOUND) return at;
    if (room < 0) {
      low = { at, room };
      if (stayed < 0) high = { at: high.at, room: high.room / 2 };
      stayed = -1;
    } else {
      high = { at, room };
      if (stayed > 0) low = { at: low.at, room: low.room / 2 };
      stayed = 1;
    }
  }
  return (low.at + high.at) / 2;
}

/**
 * The contact that is known to lie near a place, by secant steps: four or five of them.
 *
 * @param within how far off it may be [mm]
 * @returns undefined where none is found there, or one where the line goes out of the body
 */
export function contactNear(clearance: Clearance, near: number, within: number): number | undefined {
  let [before, here] = [near + within / 64, near];
  let roomBefore = clearance(before);
  // 12 steps: a contact that is not found by then is none of this kind
  for (let step = 0; step < 12; step += 1) {
    const room = clearance(here);
    const slope = (room - roomBefore) / (here - before);
    if (Math.abs(room) < FOUND) return slope > 0 ? here : undefined;
    const next = here - room / slope;
    if (!(slope > 0) || !(Math.abs(next - near) <= within)) return undefined;
    [before, roomBefore, here] = [here, room, next];
  }
  return undefined;
}
