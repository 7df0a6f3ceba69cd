import { about } from './finding-text.ts';

/** Findings about bars, rates and quotes. */
export const findingsQuote = {
  'piece-too-long': about(
    'mm',
    'This piece is longer than any bar gives[: {name} is {length:mm}, a bar gives {longest:mm}].',
    'Join it in a straight, from as many lengths as it takes, or buy longer bars.',
  ),
  'bar-joint-no-member': about(
    'count',
    'A joint between bars is on a member that there is not[: {member}].',
    'Choose a member of the frame, or take the joint out.',
  ),
  'bar-joint-misplaced': about(
    'mm',
    'A joint between bars stands where none may[: on {member}, because of {keepOut}].',
    'Move it along a straight, away from bends, ends and other tubes.',
    'It stands at',
  ),
  'bar-joint-bent-over': about(
    'count',
    'Lengths of tube are welded together before they are bent[: {member}].',
    'Grind these welds flush inside the dies, and keep grips off them. A weld behaves unlike the tube beside it: bend a test piece.',
    'Number of joints:',
  ),
  'layout-stale': about(
    'count',
    'The bars that were laid out are not for the pieces of what is shown[: {name}].',
    'Show what they were laid out for, or lay them out again. Until then tube is priced by the rates alone.',
    'Pieces that differ:',
  ),
  'layout-currency': about(
    'count',
    'Bars that were laid out have prices in another currency than the rates, or with other decimals[: {other} instead of {currency}].',
    'Lay the bars out again with prices in the currency of the rates. Nothing is converted.',
    'Decimals of their prices:',
  ),
  'layout-remnant-free': about(
    'count',
    'Remnants without a price are reckoned at nothing[: {name}].',
    'Type what they are worth in the list of stock, and lay the bars out again.',
    'Remnants:',
  ),
  'layout-price-open': about(
    'count',
    'A bar that was laid out has no price, so the line of its tube stays open[: {name}].',
    'Type its price in the list of the stock and lay the bars out again; or drop the layout, and tube is priced by the rates.',
    'Bars of it:',
  ),
  'layout-heats': about(
    'count',
    'The bars of the frame, or they and the tube that the job is for, are of several heats[: {heats}].',
    'Springback differs from heat to heat: bend a test piece of each, or keep to one heat.',
    'Number of heats:',
  ),
  'layout-not-taken': about(
    'count',
    'The bars that were laid out have not been taken from the stock yet.',
    'Take them, so that nobody else plans with them.',
    'Bars from stock:',
  ),
  'layout-one-way': about(
    'count',
    'The bars that were laid out price the tube of what is shown alone, for the first quantity.',
    'Other ways and quantities go by first fit or by the metre: mind that when you compare them.',
    'Ways and quantities beside it:',
  ),

  'rate-open': about('minor', 'No rate has been typed, so this line stays open[: {line}].', 'Type the rate.'),
  'time-open': about('min', 'No time has been typed, so this line stays open[: {line}].', 'Type the minutes.'),
  'tube-rate-missing': about(
    'mm',
    'There is no price for a tube of this size, so its line stays open[: {outside:mm} × {wall:mm}].',
    'Add a price for it.',
  ),
  'amount-out-of-range': about(
    'minor',
    'This line comes to more than can be reckoned, so it stays open[: {line}][, for {frames} frames].',
    'Look at its rate and its times.',
  ),
  'rates-are-examples': about(
    'count',
    'The price rests on examples, not on rates of your own. It is no price that anybody may give.',
    'Type your own rates, or take over the list that the shop keeps.',
    'Lines that rest on examples:',
  ),
  'days-at-bender-open': about(
    'd',
    'It is bent outside, and nobody has said how long the bender takes: the days of what he bends stay open.',
    'Ask him, and type the days.',
  ),
  'rounding-large': about(
    'percent',
    'Rounding changes the price by much[: it takes off more than the margin, which is {margin} % of the price].',
    'Round to a smaller amount.',
    'Of the price before it is rounded:',
  ),
  'rates-not-in-effect': about(
    'count',
    'The quote is of a day on which these rates are not in effect[: {date}][, in effect from {from}][, in effect until {until}].',
    'Take over the rates of that day, or change the date.',
  ),
  'minor-digits-unlike': about(
    'count',
    'This currency has another number of decimals[: {currency} has {usual}].',
    'Change the decimals, so that amounts are read right.',
    'Typed:',
  ),
  'quantity-repeated': about('count', 'This quantity stands there twice.', 'Take one of them out.'),
  'own-times-differ': about(
    'ratio',
    'What was done took longer or shorter than planned[: {line}].',
    'Take over the times of the shop for the next quote.',
    'Taken over planned:',
  ),
};
