/** An option in a table that has options beside each other. */
export type OptionColumn<Option> = {
  readonly key: string;
  readonly option: Option;
  /** It is the one that is done: its column stands out. */
  readonly chosen: boolean;
  /** Whether its mark is set, where that is not the same; null where it cannot be chosen by itself. */
  readonly checked?: boolean | null;
  /** As short as its column is narrow. */
  readonly name: string;
  /** For ears, in full. */
  readonly spoken?: string;
  /** A line below its name. */
  readonly about?: string;
  /** What makes it stand out, such as that it is recommended. */
  readonly mark?: string;
};
