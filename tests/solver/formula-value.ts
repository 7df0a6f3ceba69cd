import type { Figure } from '../../server/plan/figure.ts';

/** What can be read in a formula besides symbols. */
const NAMES = { max: Math.max, min: Math.min, ln: Math.log } as const;
const SIGNS = ['+', '−', '/', '(', ')', ','] as const;

/**
 * A formula reckoned with the inputs that are stated beside it, in the units that they are stated in: sums, products
 * side by side, quotients from left to right, squares, brackets, max, min and ln. Undefined where it has anything else,
 * so that a symbol without an input is never passed over as a number.
 */
export function formulaValue({ working }: Figure): number | undefined {
  const [, right = working.formula] = /^\S+ = (.*)$/u.exec(working.formula) ?? [];
  const known = new Map(working.inputs.map(({ symbol, value }) => [symbol, value] as const));
  const symbols = [...known.keys(), ...Object.keys(NAMES), 'π', '²', ...SIGNS].sort((a, b) => b.length - a.length);
  const tokens: string[] = [];
  for (let at = 0; at < right.length;) {
    if (right[at] === ' ') {
      at += 1;
      continue;
    }
    const digits = /^\d+(\.\d+)?/u.exec(right.slice(at))?.[0];
    const token = digits ?? symbols.find((symbol) => right.startsWith(symbol, at));
    if (token === undefined) return undefined;
    tokens.push(token);
    at += token.length;
  }
  let at = 0;
  const took = (token: string): boolean => {
    if (tokens[at] !== token) return false;
    at += 1;
    return true;
  };
  const sum = (): number => {
    let value = product();
    for (;;) {
      if (took('+')) value += product();
      else if (took('−')) value -= product();
      else return value;
    }
  };
  const product = (): number => {
    let value = power();
    while (at < tokens.length && !['+', '−', ')', ','].includes(tokens[at]!))
      value = took('/') ? value / power() : value * power();
    return value;
  };
  const power = (): number => {
    const value = atom();
    return took('²') ? value ** 2 : value;
  };
  const atom = (): number => {
    const token = tokens[at] ?? '';
    at += 1;
    if (token === '(') {
      const value = sum();
      return took(')') ? value : NaN;
    }
    if (token in NAMES) {
      if (!took('(')) return NaN;
      const values = [sum()];
      while (took(',')) values.push(sum());
      return took(')') ? NAMES[token as keyof typeof NAMES](...(values as [number])) : NaN;
    }
    return known.get(token) ?? (token === 'π' ? Math.PI : /^\d/u.test(token) ? Number(token) : NaN);
  };
  const value = sum();
  return at === tokens.length && !Number.isNaN(value) ? value : undefined;
}
