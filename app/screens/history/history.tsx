export function HistoryScreen() { return null; }
