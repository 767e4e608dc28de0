/** A car's number plate, in the mono face. */
export function Plate({ text }: { text: string }) {
  return <span class="plate">{text}</span>;
}
