import type { Units } from '../job/job.ts';
import { formatLength } from '../language/length-format.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Chamber } from '../plan/purge.ts';
import type { SetUp } from './set-up.ts';
import type { SheetInput } from './sheet-input.ts';
import { openingWords, placeWords } from './tube-place-words.ts';
import { capital, paragraph, stacked, type Block } from './text-block.ts';

const HEIGHT = 2;

/** A height that nobody can see on a bench [mm]. */
const LEVEL = 0.5;

function riseWords(rise: number, units: Units): string {
  if (Math.abs(rise) < LEVEL) return words('sheet.vent-level');
  const height = formatLength(Math.abs(rise), units);
  return words(rise > 0 ? 'sheet.vent-higher' : 'sheet.vent-lower', { height });
}

/** What is opened and what is shut before the gas is turned on, in words; chamber by chamber where there are several. */
export function openings({ chambers }: SetUp, input: SheetInput, width: number): Block {
  const said = chambers.map((chamber) => {
    const sentences = openingsOf(chamber, input).join(' ');
    return chambers.length === 1 ? sentences : words('sheet.chamber-said', { number: chamber.number, said: sentences });
  });
  return stacked(said.map((one) => paragraph(one, width, { height: HEIGHT })));
}

function openingsOf(chamber: Chamber, input: SheetInput): string[] {
  const { units } = input.job;
  const { feed, vents, plugs, pluggedHoles, dams, taped, deadLegs } = chamber;
  const list = (name: string, said: readonly string[]): string[] =>
    said.length === 0 ? [] : [capital(words('sheet.opening-list', { name, list: said.join('; ') }))];
  return [
    ...list(words('sheet.feed'), [openingWords(feed, input)]),
    ...(vents.length === 0 ? [words('sheet.no-vent')] : []),
    ...list(
      words('sheet.vent'),
      vents.map((vent) =>
        words('sheet.vent-opening', {
          opening: openingWords(vent, input),
          bore: formatLength(vent.bore, units),
          rise: riseWords(vent.height - feed.height, units),
        }),
      ),
    ),
    ...list(words('sheet.to-plug'), [
      ...plugs.map(({ member, end }) =>
        words(end === 'start' ? 'sheet.place-start' : 'sheet.place-finish', { member }),
      ),
      ...pluggedHoles.map((number) => words('sheet.vent-hole', { number })),
    ]),
    ...list(
      words('sheet.to-dam'),
      dams.map((dam) => placeWords(dam, input)),
    ),
    ...list(
      words('sheet.to-tape'),
      taped.map(({ weld }) => weld),
    ),
    ...deadLegs.map(({ stretches, length, clears, points, welds }) => {
      const members = [...new Set(stretches.map(({ member }) => member))].join(', ');
      const dead = words('sheet.dead-leg', {
        member: members,
        length: formatFigure(length, units),
        points: wordsOf('sheet.points', points),
        time: formatFigure(clears, units),
      });
      return welds.length === 0 ? dead : `${dead} ${words('sheet.dead-leg-welds', { welds: welds.join(', ') })}`;
    }),
  ];
}
