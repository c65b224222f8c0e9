/** Whether work may go on that ends in about so many seconds, or in a share of them. */
export function untilAfter(seconds: number): (share?: number) => boolean {
  const begun = performance.now();
  return (share = 1) => performance.now() - begun < share * 1000 * seconds;
}
