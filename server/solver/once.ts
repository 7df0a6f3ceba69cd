/** Something that is worked out when somebody first asks, and given again from then on. */
export function once<Of>(work: () => Of): () => Of {
  let done: { readonly of: Of } | null = null;
  return () => (done ??= { of: work() }).of;
}
