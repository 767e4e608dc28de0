export function BuildScreen() { return null; }
