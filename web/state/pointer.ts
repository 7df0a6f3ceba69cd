/** JSON pointers (RFC 6901) into plain data. Keys of a Job hold no ~ or /, except those of its texts as typed. */
const keysOf = (pointer: string): string[] =>
  pointer === ''
    ? []
    : pointer
        .slice(1)
        .split('/')
        .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));

type Plain = Readonly<Record<string, unknown>>;

const isPlain = (value: unknown): value is Plain => typeof value === 'object' && value !== null;

/** What stands at a pointer; undefined where nothing does. */
export function valueAt(data: unknown, pointer: string): unknown {
  return keysOf(pointer).reduce<unknown>((inner, key) => (isPlain(inner) ? inner[key] : undefined), data);
}

/** The same data with another value at the pointer. What is not on the way is shared, not copied. */
export function withValue<Data>(data: Data, pointer: string, value: unknown): Data {
  const put = (inner: unknown, keys: readonly string[]): unknown => {
    const [key, ...rest] = keys;
    if (key === undefined) return value;
    if (Array.isArray(inner)) {
      return inner.map((item: unknown, index) => (String(index) === key ? put(item, rest) : item));
    }
    if (!isPlain(inner)) throw new Error(`There is nothing to set at ${pointer}.`);
    return { ...inner, [key]: put(inner[key], rest) };
  };
  return put(data, keysOf(pointer)) as Data;
}

/** Pointers of all values that differ, as near to the leaves as both sides have the same form. */
export function differences(one: unknown, other: unknown, at = ''): string[] {
  if (Object.is(one, other)) return [];
  const sameForm =
    isPlain(one) &&
    isPlain(other) &&
    Array.isArray(one) === Array.isArray(other) &&
    (!Array.isArray(one) || Object.keys(one).length === Object.keys(other).length);
  if (!sameForm) return [at];
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].flatMap((key) =>
    differences(one[key], other[key], `${at}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`),
  );
}
