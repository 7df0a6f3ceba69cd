/** How an end of a leg is held: pinned, it turns freely; fixed, it does not turn. */
type Held = 'pinned' | 'fixed';

/** Buckling length over length: for design and as theory has it; and whether it is that of a head that goes sideways. */
export type BucklingFactor = { readonly design: number; readonly theory: number; readonly sways: boolean };

/** AISC 360 commentary, table C-A-7.1; the theoretical value of fixed and pinned is printed as 0.7. */
const STAYS: Readonly<Record<`${Held}-${Held}`, Omit<BucklingFactor, 'sways'>>> = {
  'pinned-pinned': { design: 1, theory: 1 },
  'fixed-pinned': { design: 0.8, theory: 0.7 },
  'pinned-fixed': { design: 0.8, theory: 0.7 },
  'fixed-fixed': { design: 0.65, theory: 0.5 },
};

/** The same where the head can go sideways, foot first. Pinned at both ends such a leg holds nothing: it has no value. */
const GOES: Readonly<Record<`${Held}-${Held}`, Omit<BucklingFactor, 'sways'> | null>> = {
  'pinned-pinned': null,
  'fixed-pinned': { design: 2.1, theory: 2 },
  'pinned-fixed': { design: 2, theory: 2 },
  'fixed-fixed': { design: 1.2, theory: 1 },
};

/**
 * Buckling length over length of a leg (AISC 360 commentary, table C-A-7.1, design values with the theoretical ones).
 * A leg that is pinned at both ends and whose head nothing keeps from going sideways gets the factor of one whose head
 * stays: something else has to hold it.
 */
export function bucklingFactor({
  foot,
  head,
  sways,
}: {
  readonly foot: Held;
  readonly head: Held;
  readonly sways: boolean;
}): BucklingFactor {
  const ends = `${foot}-${head}` as const;
  const going = sways ? GOES[ends] : null;
  return going === null ? { ...STAYS[ends], sways: false } : { ...going, sways: true };
}

/** Euler's load [N] of a strut: N = π² E I/(K L)²; modulus [MPa], second moment [mm⁴], buckling length [mm]. */
export const eulerLoad = ({
  elasticModulus,
  secondMoment,
  bucklingLength,
}: {
  readonly elasticModulus: number;
  readonly secondMoment: number;
  readonly bucklingLength: number;
}): number => (Math.PI ** 2 * elasticModulus * secondMoment) / bucklingLength ** 2;

/** Imperfection, where the plateau ends, and the safety of the resistance: EN 1993-1-4, austenitic hollow sections, from memory. */
export const IMPERFECTION = 0.49;
export const PLATEAU = 0.4;
export const SAFETY = 1.1;

/** A real strut: slenderness λ and φ, the share χ of its yield load that it keeps [–], and what it carries [N]. */
export type ReducedStrut = {
  readonly slenderness: number;
  readonly middle: number;
  readonly share: number;
  readonly load: number;
};

/**
 * What a strut carries that is neither straight nor free of stress (EN 1993-1-4, 5.4.2, from memory):
 * λ = √(A f/N), φ = ½ (1 + α (λ − λ₀) + λ²), χ = 1/(φ + √(φ² − λ²)) but at most 1, N_b = χ A f/γ.
 *
 * @param area [mm²]
 * @param proofStress [MPa]
 * @param euler Euler's load [N]
 * @param safety γ; 1 leaves it out
 */
export function reducedStrut({
  area,
  proofStress,
  euler,
  safety = SAFETY,
}: {
  readonly area: number;
  readonly proofStress: number;
  readonly euler: number;
  readonly safety?: number;
}): ReducedStrut {
  const yields = area * proofStress;
  const slenderness = Math.sqrt(yields / euler);
  const middle = (1 + IMPERFECTION * (slenderness - PLATEAU) + slenderness ** 2) / 2;
  // φ² − λ² is never below 0: (1 − λ)² + α (λ − λ₀) is not, for any λ from 0 on
  const share = Math.min(1, 1 / (middle + Math.sqrt(Math.max(0, middle ** 2 - slenderness ** 2))));
  return { slenderness, middle, share, load: (share * yields) / safety };
}
