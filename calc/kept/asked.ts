/** Works something out when it is first asked for, and never twice. */
export function whenAsked<Answer>(work: () => Answer): () => Answer {
  let known: { readonly answer: Answer } | undefined;
  return () => {
    known ??= { answer: work() };
    return known.answer;
  };
}
