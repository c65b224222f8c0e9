/** What stands under every plan of the set. */
export const PLAN_NOTES = [
  'Thin grey is existing work and what others build; full ink is what this set installs. Symbols are not to scale: see the legend.',
  'Conduit sizes stand beside each straight, a number in brackets where several lie side by side. Sizes not shown for want of room are in the conduit schedule.',
  'Dotted feeders join what they feed: their length is given, their way is not drawn.',
  'Field verify column and stripe positions before setting out. Written dimensions and the setting-out schedule govern; do not scale.',
];
