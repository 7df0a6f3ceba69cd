import type { Size } from './screen.ts';

type Vector = { readonly x: number; readonly y: number; readonly z: number };

/** From where somebody looks at the frame, and how near. */
export type Viewpoint = {
  /** Round the upright axis z, from x towards y [degrees], 0 to 360. */
  readonly turn: number;
  /** Above the x-y plane [degrees], −90 to 90. */
  readonly tilt: number;
  /** 1: all of the frame is seen. */
  readonly nearness: number;
  /** The frame's middle beside the middle of the picture, as a share of the smaller side; right and up positive. */
  readonly aside: { readonly right: number; readonly up: number };
};

/** As the pictorial view of the plan shows it: isometric, ISO 5456-3, from the side of −x and −y. */
export const AS_AT_FIRST: Viewpoint = {
  turn: 225,
  tilt: (Math.atan(Math.SQRT1_2) * 180) / Math.PI,
  nearness: 1,
  aside: { right: 0, up: 0 },
};

/** Nearest and farthest: our own choice; a wall fills the picture, and a frame is a stamp. */
const NEARNESS = { least: 0.25, most: 60 };
/** One push of an arrow key [degrees], and one of + or −. */
const STEP = { turn: 7.5, nearness: 1.25 };
/** Dragging across the whole smaller side turns by this [degrees]: half round. */
const TURN_ACROSS = 180;
const MOST_ASIDE = 4;

const held = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** Turned by degrees to the right and up, as the frame itself is seen to turn. */
export const turned = (from: Viewpoint, right: number, up: number): Viewpoint => ({
  ...from,
  turn: (((from.turn - right) % 360) + 360) % 360,
  tilt: held(from.tilt - up, -90, 90),
});

/** Moved across the picture, as shares of its smaller side. */
export const moved = (from: Viewpoint, right: number, up: number): Viewpoint => ({
  ...from,
  aside: {
    right: held(from.aside.right + right, -MOST_ASIDE, MOST_ASIDE),
    up: held(from.aside.up + up, -MOST_ASIDE, MOST_ASIDE),
  },
});

/** Nearer by a factor; what lies under a place of the picture (shares, from its middle) stays there. */
export function nearer(from: Viewpoint, factor: number, at = { right: 0, up: 0 }): Viewpoint {
  const nearness = held(from.nearness * factor, NEARNESS.least, NEARNESS.most);
  const by = nearness / from.nearness;
  return moved({ ...from, nearness }, (at.right - from.aside.right) * (1 - by), (at.up - from.aside.up) * (1 - by));
}

/** A way of the pointer on the picture [px], down positive. */
export type Drag = { readonly right: number; readonly down: number };

export const dragged = (from: Viewpoint, { right, down }: Drag, size: Size): Viewpoint => {
  const across = Math.max(1, Math.min(size.width, size.height));
  return turned(from, (right / across) * TURN_ACROSS, (-down / across) * TURN_ACROSS);
};

export const slid = (from: Viewpoint, { right, down }: Drag, size: Size): Viewpoint => {
  const across = Math.max(1, Math.min(size.width, size.height));
  return moved(from, right / across, -down / across);
};

/** What a view in space can be told without a pointer. */
export type Turn = 'left' | 'right' | 'up' | 'down' | 'nearer' | 'farther' | 'reset';

/** One step of a button or a key. */
export function stepped(from: Viewpoint, turn: Turn): Viewpoint {
  switch (turn) {
    case 'left':
      return turned(from, -STEP.turn, 0);
    case 'right':
      return turned(from, STEP.turn, 0);
    case 'up':
      return turned(from, 0, STEP.turn);
    case 'down':
      return turned(from, 0, -STEP.turn);
    case 'nearer':
      return nearer(from, STEP.nearness);
    case 'farther':
      return nearer(from, 1 / STEP.nearness);
    case 'reset':
      return AS_AT_FIRST;
  }
}

const KEYS: Readonly<Record<string, Turn>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
  '+': 'nearer',
  '=': 'nearer',
  '-': 'farther',
  '\u2212': 'farther',
  '0': 'reset',
};

/** What a key means to the view; undefined where it means nothing there. */
export const turnOfKey = (key: string): Turn | undefined => KEYS[key];

/** The picture's own axes in those of the frame, unit vectors; `out` points at the person. */
export function axesOf({ turn, tilt }: Viewpoint): { right: Vector; up: Vector; out: Vector } {
  const [a, b] = [(turn * Math.PI) / 180, (tilt * Math.PI) / 180];
  const [sinA, cosA, sinB, cosB] = [Math.sin(a), Math.cos(a), Math.sin(b), Math.cos(b)];
  return {
    right: { x: -sinA, y: cosA, z: 0 },
    up: { x: -sinB * cosA, y: -sinB * sinA, z: cosB },
    out: { x: cosB * cosA, y: cosB * sinA, z: sinB },
  };
}

/** A ball that holds everything drawn [mm]. */
export type Ball = { readonly middle: Vector; readonly radius: number };

/**
 * The ball that the picture is fitted to: the one before while what is drawn stays within it and does not shrink to
 * half, so that the picture does not breathe with every letter that is typed.
 */
export function heldBall(before: Ball | null, now: Ball): Ball {
  if (before === null || before.radius > 2 * now.radius) return now;
  const { middle: a } = before;
  const { middle: b } = now;
  const between = Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
  return between + now.radius <= before.radius * (1 + 1e-6) ? before : now;
}

/** Part of the smaller side that the ball takes at nearness 1; the rest is for what is written beside the tubes. */
const SHARE = 0.88;

/** Pixels for each millimetre. */
export const scaleOf = (ball: Ball, { nearness }: Viewpoint, size: Size): number =>
  (nearness * SHARE * Math.min(size.width, size.height)) / (2 * ball.radius);
