/** Whether what the lock file of the project in this folder asks for is installed there. */
export function isInstalled(root: string): boolean;
