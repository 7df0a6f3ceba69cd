import { about } from './finding-text.ts';

/** What is said about grinding, polishing and cleaning. */
export const findingsFinish = {
  'finish-too-coarse-for-sea': about(
    'um',
    'This surface may be too rough for the sea: salt stays in its scratches and stains it brown.',
    'Choose satin, or a mirror.',
    'Its roughness may be',
  ),
  'dichromate-bath': about(
    'count',
    'This bath holds dichromate, a chromium(VI) salt that causes cancer and must not get into a drain.',
    'Choose a citric bath.',
  ),
  'pickle-dangerous': about(
    'count',
    'Pickling acid burns through skin, and a burn of hydrofluoric acid may not hurt at first.',
    'Leave it to trained people with full face cover, acid gloves and calcium gluconate gel at hand, or grind the colours off and use a citric bath.',
  ),
  'acid-in-sleeve': about(
    'count',
    'Acid gets into the crevice between sleeve and tube and stays there; it eats the steel and comes out later, on hands too.',
    'Weld without a sleeve, or clean it without acid.',
  ),
  'treatment-below-surface': about(
    'count',
    'The weld is not ground flush, so that its bead stays to be seen[ in a surface that is {surface}].',
    'Have it ground flush, or agree with the customer that it stays.',
  ),
};
