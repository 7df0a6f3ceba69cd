/** What the page says of legs, gaps and strength. */
export const legWords = {
  'doubt.level': 'the level',
  'doubt.point': 'a point of the site',
  'doubt.placing': 'where the frame is placed',
  'doubt.thing': 'a thing of the site',
  'doubt.frame': 'marks on the frame',
  'doubt.cutting': 'sawing and welding',
} as const;
