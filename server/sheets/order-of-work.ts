import { words } from '../language/words.ts';
import { saidWords } from '../language/said-words.ts';
import type { Way } from '../plan/correction.ts';
import type { Flow } from './flow.ts';
import { HEIGHTS, write } from './ink.ts';
import type { SheetInput } from './sheet-input.ts';
import { tick } from './sign.ts';
import { beside, capital, paragraph, space, lineHeight, stacked, wrap, type Block } from './text-block.ts';

/** What a box to tick takes before its words, and the air between two columns [mm]. */
const BOX = 6;
const AIR = 4;

/** The order in which the way is done, each step with a box to tick. */
export function orderOfWork(flow: Flow, { steps }: Way, { job }: SheetInput): void {
  if (steps.length === 0) return;
  const said = steps.map(({ key, joint, data }, index) => {
    const name = key.startsWith('step.') ? key : `step.${key}`;
    const text = capital(saidWords({ key: name, data: { joint, ...data } }, job.units));
    return words('sheet.order-row', { number: index + 1, text });
  });
  const half = (flow.width - AIR) / 2;
  const lines = (text: string, width: number): string[] =>
    wrap(text, width - BOX, { height: HEIGHTS.text, weight: 400 });
  const short = said.every((text) => lines(text, half).length === 1);
  const row = (text: string, width: number): Block =>
    stacked(
      lines(text, width).map((part, index) =>
        index === 0
          ? tick(part)
          : { height: lineHeight(HEIGHTS.text), items: [write([BOX, 1.4 * HEIGHTS.text], part)] },
      ),
    );
  const head = paragraph(words('sheet.order'), flow.width, { weight: 600 });
  if (short && said.length > 3) {
    const rows = Math.ceil(said.length / 2);
    const pairs = said
      .slice(0, rows)
      .map((text, index) =>
        beside([
          { left: 0, block: row(text, half) },
          ...said.slice(rows + index, rows + index + 1).map((other) => ({ left: half + AIR, block: row(other, half) })),
        ]),
      );
    flow.addTogether([head, ...pairs, space(2)]);
    return;
  }
  flow.addTogether([head, ...said.map((text) => row(text, flow.width)), space(2)]);
}
