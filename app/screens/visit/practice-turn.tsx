/** The practice car's own rack leads a move: one touch turns the adjuster until its gauge shows the figure, and reads off the rest. */
import { useState } from 'preact/hooks';
import { type Of, putTurned } from '../../state/by-rack.ts';

export function PracticeTurns(of: Of) {
  const [failed, setFailed] = useState('');
  const turn = async () => {
    try {
      const { practiceTurn } = await import('../../practice/turn.ts');
      putTurned(of, await practiceTurn(of));
    } catch (error) {
      setFailed(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <>
      <button type="button" class="quiet wide" onClick={() => void turn()}>
        Turn it on the practice rack
      </button>
      {failed && <p role="alert">{failed}</p>}
    </>
  );
}
