/** The cautions that stand in a frame on the cut and purge sheet. */
export const cautionWords = {
  'sheet.cautions': 'Cautions',
  'sheet.caution-1':
    '1. This sheet is an estimate. The law of the place, the permit of the site, and a qualified welder and engineer decide.',
  'sheet.caution-2':
    '2. Argon kills without warning: no smell, no urge to breathe. Keep your head out of purged and low spaces. Lead the vent outside, run a fan, keep a working oxygen meter at floor level; below 19.5 % leave.',
  'sheet.caution-3':
    '3. Close the purge at the bottle whenever you stop. Never leave it on overnight in a boat or a closed room.',
  'sheet.caution-4': '4. Never weld a closed tube. Every chamber needs a vent: trapped air that gets hot bursts out.',
  'sheet.caution-5': '5. Chain bottles upright; cap on before they are moved; keep spares out of low rooms.',
  'sheet.caution-6':
    '6. Fume and grinding dust of stainless hold chromium(VI) and nickel: draw them off at the source and wear a suitable respirator.',
  'sheet.caution-7':
    '7. Cover skin and eyes: the arc burns in seconds and shines back from polished tube. Screen others from it.',
  'sheet.caution-8':
    '8. Fuel, gas lockers, foam, fibreglass and varnish burn: clear or shield them, watch for at least an hour afterwards, look behind too.',
  'sheet.caution-9':
    '9. On a boat: both poles of the batteries off, shore power out, chargers, alternator, instruments and bonding leads disconnected as their makers say. Clamp the return on the part being welded; no current through rigging, shaft, bearings, engine, hull fittings or lightning bond. Afloat, ask the yard about stray current.',
  'sheet.caution-10':
    '10. Pickling acid is for trained people: full face cover and acid gloves, calcium gluconate gel at hand, rinse neutralised and collected. A burn of hydrofluoric acid may not hurt at first: to hospital at once.',
  'sheet.caution-11': '11. Rails, steps and struts hold people: have them looked at and tested under load before use.',
} as const;
