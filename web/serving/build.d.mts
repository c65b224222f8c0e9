export function buildPage(root: string): void;
export function buildIfNeeded(root: string): void;
