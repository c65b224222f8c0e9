/**
 * First fit, the longest first, for so many pieces that nothing better is looked for: each goes into the first stock that
 * has room, found in a tree of the most room below. In the order of the stocks, the pieces of each by their places.
 * @param lengths of the pieces, none longer than the stock
 * @param kerf lost between two pieces
 */
export function fitMany(stock: number, lengths: readonly number[], kerf: number): readonly (readonly number[])[] {
  const order = lengths.map((_, i) => i).sort((a, b) => lengths[b]! - lengths[a]! || a - b);
  let leaves = 1;
  while (leaves < lengths.length) leaves *= 2;
  const room = new Float64Array(2 * leaves).fill(stock + kerf);
  const stocks: number[][] = [];
  for (const piece of order) {
    const needed = lengths[piece]! + kerf - SAME * stock;
    let at = 1;
    while (at < leaves) at = room[2 * at]! >= needed ? 2 * at : 2 * at + 1;
    const place = at - leaves;
    if (place === stocks.length) stocks.push([]);
    stocks[place]!.push(piece);
    room[at] = room[at]! - lengths[piece]! - kerf;
    for (at >>= 1; at >= 1; at >>= 1) room[at] = Math.max(room[2 * at]!, room[2 * at + 1]!);
  }
  return stocks;
}

/** Lengths that differ by less of a stock are the same. */
const SAME = 1e-9;
