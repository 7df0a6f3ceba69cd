import type { Job } from '../job/job.ts';
import { words, wordsOf } from '../language/words.ts';
import type { View } from '../plan/view.ts';
import { dimensionWords } from './dimension-words.ts';
import { HEIGHTS } from './ink.ts';
import { picture, scaleFor, type Room, type Selection } from './picture.ts';
import { beside, paragraph, space, stacked, type Block } from './text-block.ts';

/** Air between two pictures, and what a caption takes [mm]. */
const AIR = 4;
const CAPTION = 5;

/** What of a view the bend sheet shows: the frame as wanted, one member wide where one is meant. */
export function frameSelection(job: Job, member: string | null, sizes: boolean): Selection {
  return {
    layers: ['wanted'],
    dimensions: ({ layer }) => sizes && layer === 'wanted',
    // an end seen from its end has no way out of the tube to stand its words on
    marks: ({ layer, kind, label, towards }) =>
      layer === 'wanted' &&
      Math.hypot(...towards) > 0.3 &&
      (kind === 'bend' || (kind === 'end' && (member === null || label === member))),
    member,
    say: dimensionWords(job.units),
    name: ({ kind, label }) => (kind === 'end' ? words('sheet.datum-end-of', { member: label }) : label),
  };
}

/** A view under its name. */
export function captioned(view: View, what: Selection, room: Room): Block {
  const drawn = picture(view, what, { ...room, height: room.height - CAPTION });
  if (drawn.items.length === 0) return space(0);
  const caption = words('sheet.view-at-scale', { view: wordsOf('view', view.key), scale: drawn.scale.text });
  return stacked([paragraph(caption, room.width, { height: HEIGHTS.small }), drawn]);
}

/**
 * Plan, elevation, side and the view in space of a frame that is not flat, in their places by first angle on A4 and by
 * third angle on Letter, the square ones at one scale.
 */
export function viewsInSpace(
  views: readonly View[],
  what: Selection,
  how: { readonly paper: Job['print']['paper']; readonly width: number; readonly height: number },
): Block {
  const find = (key: View['key']): View | undefined => views.find((view) => view.key === key);
  const [face, top, side, pictorial] = [find('face'), find('top'), find('side'), find('pictorial')];
  const rows =
    how.paper === 'letter'
      ? [
          [top, pictorial],
          [face, side],
        ]
      : [
          [side, face],
          [pictorial, top],
        ];
  const cell = { width: (how.width - AIR) / 2, height: (how.height - AIR) / 2 };
  const inside = { width: cell.width, height: cell.height - CAPTION };
  const least = [face, top, side]
    .filter((view) => view !== undefined)
    .map((view) => scaleFor(view, what, inside))
    .reduce<Room['scale']>((best, one) => (best === undefined || one.factor < best.factor ? one : best), undefined);
  const drawn = (view: View | undefined): Block => {
    if (view === undefined) return space(0);
    return captioned(view, what, view.key === 'pictorial' || least === undefined ? cell : { ...cell, scale: least });
  };
  return stacked(
    rows.flatMap(([left, right]) => [
      beside([
        { left: 0, block: drawn(left) },
        { left: cell.width + AIR, block: drawn(right) },
      ]),
      space(AIR / 2),
    ]),
  );
}
