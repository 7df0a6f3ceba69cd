/** Why a way is recommended, what would change that, and what can go wrong with it. */
export const comparing = {
  'reason.fewest-welds':
    'Recommended: of the ways that come within ± {tolerance:mm} and whose kinks do not show, it has the fewest welds.[ But the readings are only exact to ± {unsure:mm}: it may be outside.]',
  'reason.no-weld':
    'Recommended: it comes within ± {tolerance:mm} without a weld.[ But the readings are only exact to ± {unsure:mm}: it may be outside.]',
  'reason.good-enough':
    'Recommended: the frame is within ± {tolerance:mm} as it is.[ But the readings are only exact to ± {unsure:mm}: it may be outside.]',
  'reason.only-new-frame': 'Recommended: no correction comes within ± {tolerance:mm}.',
  'reason.kinks-show': 'Recommended: the corrections that come within ± {tolerance:mm} leave kinks that show.',
  'reason.least-misfit': 'No way comes within ± {tolerance:mm}. This one comes nearest, to {misfit:mm}.',
  'reason.least-misfit-kink':
    'What comes within ± {tolerance:mm} has kinks that show. This one comes nearest, to {misfit:mm}, with a kink of {kink:deg}.',
  'reason.none': 'No way is possible.',

  'money.as-new': 'A new frame would cost as much.',
  'money.cheaper-than-new': 'It is {cost:money} cheaper than a new frame.',
  'money.dearer-than-new': 'It is {cost:money} dearer than a new frame.',
  'money.other-less': 'For {cost:money} less: {other}.',
  'money.other-less-but-off': 'For {cost:money} less: {other}, but {off:mm} further off.',

  'change.readings': 'With readings {times} times as exact it would be sure to be within ± {tolerance:mm}.',
  'change.tolerance': 'With ± {tolerance:mm} allowed, this would do: {way}.',
  'change.tolerance-leave': 'With ± {tolerance:mm} allowed, the frame could be left as it is.',
  'change.kink': 'If kinks up to {kink:deg} may show, this would do: {way}.',
  'change.kink-one-weld': 'If kinks up to {kink:deg} may show, this would do, with one weld less: {way}.',
  'change.kink-welds': 'If kinks up to {kink:deg} may show, this would do, with {welds} welds less: {way}.',
  'change.cost': 'If it cost {cost:money} less, this would be taken, with as many welds: {way}.',
  'change.money': 'If money alone counts: {way}, for {cost:money} less.',
  'change.days': 'If days alone count: {way}, done {days} days sooner.',
  'change.rate-open': 'A rate is missing, so the costs are not compared.',

  'risk.opening-wrinkles': 'A bend that is opened can wrinkle or go flat. Ask the bender first.',
  'risk.work-hardened': 'The bend was hardened when it was made. It springs back more this time, and may crack.',
  'risk.same-slip-again': 'Nobody knows yet what went wrong. The next frame may come out the same.',
  'risk.tape-doubt': 'The readings are less exact than the frame must be. Measure again before anything is cut.',
  'risk.weld-pull': 'The welds pull the open ends. Brace them before tacking.',
  'risk.kink-shows': 'The kink at a joint can be seen.',
  'risk.step-to-grind': 'The walls meet with a step that has to be ground.',
  'risk.joint-near-bend': 'A joint stands on or close to a bend. There is little room to clamp and weld.',
  'risk.saddle-refit': 'Saddles come apart and have to be fitted again.',
  'risk.narrow-slug': 'What is cut out is narrower than two saw cuts. The second cut has little to bite on.',
  'risk.root-sugars': 'The root turns to sugar where the purge fails.',
  'risk.packing-comes-loose': 'Packing under a foot can come loose.',
  'risk.price-open': 'Something in it has no price yet: it costs more than is shown.',
  'risk.offer-not-asked': 'What the bender takes is only reckoned. Ask him for an offer.',
  'risk.price-on-examples': 'Its price rests on examples. Type your own rates before anybody decides by it.',
} as const;
