import { amountText, formatMoney } from '../language/quantity-format.ts';

/** How amounts of one currency are written. */
export type Money = {
  /** With the code of its currency: 'EUR 1,234.50'. */
  readonly whole: (minor: number) => string;
  /** Without it, for tables that say the currency above: '1,234.50'. */
  readonly bare: (minor: number) => string;
  readonly currency: string;
};

/** Writes amounts in minor units with the digits of their currency. */
export const moneyIn = ({ currency, minorDigits }: { currency: string; minorDigits: number }): Money => ({
  whole: (minor) => formatMoney(minor, currency, minorDigits),
  bare: (minor) => amountText(minor, minorDigits),
  currency,
});
