import type { Frame, Member, RunPoint } from '../../server/job/frame.ts';
import { shapes, stop, type Case } from './frame-finding-cases.ts';

const { D, at } = shapes;

const member = (name: string, points: RunPoint[], onto?: string): Member => ({
  name,
  path: { by: 'points', points, closed: false },
  start: onto === undefined ? { end: 'free' } : { end: 'saddle', onto },
  finish: { end: 'free' },
});
const members = (...all: Member[]): Frame => ({ shape: 'members', members: all });
const chained = (direction: RunPoint, normal: RunPoint): Frame => {
  const xyz = ({ x, y, z }: RunPoint) => ({ x, y, z });
  return members({
    ...member('tube', []),
    path: {
      by: 'chain',
      start: { x: 0, y: 0, z: 0 },
      direction: xyz(direction),
      normal: xyz(normal),
      pieces: [
        { piece: 'straight', length: 500 },
        { piece: 'arc', angle: 90, radius: null, rotation: 0, made: 'die' },
        { piece: 'straight', length: 500 },
      ],
    },
  });
};
const post = member('post', [at(0, 0), at(0, 1000)]);

const byMembers: Case[] = [
  stop(
    'saddle-partner-missing',
    'a coped end on nobody',
    members(post, member('rail', [at(0, 500), at(600, 500)], 'nobody')),
    '/members/1/start/onto',
    { onto: 'nobody', member: 'rail' },
  ),
  stop(
    'saddle-partner-missing',
    'on itself',
    members({ ...post, start: { end: 'saddle', onto: 'post' } }),
    '/members/0/start/onto',
    {
      onto: 'post',
    },
  ),
  stop(
    'saddle-end-off-partner',
    'a coped end that hangs in the air',
    members(post, member('rail', [at(50, 500), at(600, 500)], 'post')),
    '/members/1/start',
    { value: 50, high: D / 2 },
  ),
  stop(
    'member-name-twice',
    'two of one name',
    members(post, member('post', [at(500, 0), at(500, 900)])),
    '/members/1/name',
    {
      name: 'post',
    },
  ),
  stop(
    'members-cross',
    'a member through another',
    members(post, member('rail', [at(-300, 500, 10), at(600, 500, 10)])),
    '/members/1',
    { first: 'post', second: 'rail', value: 10, low: D },
  ),
  stop(
    'path-not-possible',
    'a chain without a direction',
    chained(at(0, 0), at(0, 0, 1)),
    '/members/0/path/direction',
    {
      member: 'tube',
    },
  ),
  stop('path-not-possible', 'a normal along the tube', chained(at(2, 0), at(5, 0)), '/members/0/path/normal', {
    member: 'tube',
  }),
];

const coil = (name: string, high: number): Member => ({
  name,
  path: {
    by: 'chain',
    start: { x: 0, y: 0, z: high },
    direction: { x: 1, y: 0, z: 0 },
    normal: { x: 0, y: 0, z: 1 },
    pieces: Array.from({ length: 120 }, (_, index) =>
      index % 2 === 0
        ? { piece: 'straight', length: 200 }
        : { piece: 'arc', angle: 1, radius: null, rotation: 0, made: 'die' },
    ),
  },
  start: { end: 'free' },
  finish: { end: 'free' },
});

const large: Case[] = [
  stop(
    'frame-too-large',
    'three tubes of 120 pieces',
    members(coil('one', 0), coil('two', 100), coil('three', 200)),
    '',
    { value: 360, high: 300 },
  ),
];

export const memberStops: readonly Case[] = [...byMembers, ...large];
