/** First load. What cannot be drawn costs its own part of the screen: it is said, and the way to the records stays open. */
import { Component, type ComponentChildren } from 'preact';
import { hashOf } from '../routes.ts';

interface Props {
  /** What cannot be shown then, such as `This car`; without it the whole screen, with ways out. */
  readonly part?: string;
  readonly children: ComponentChildren;
}
interface State {
  readonly why?: string;
}

/** A new key starts it afresh. */
export class Boundary extends Component<Props, State> {
  static override getDerivedStateFromError(error: unknown): State {
    return { why: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    const { part, children } = this.props;
    const { why } = this.state;
    if (why === undefined) return children;
    if (part) {
      return (
        <p role="alert" class="card card-caution">
          {part} cannot be shown: a record of it is not as it should be. Nothing of it was changed or deleted.{' '}
          <span class="soft">{why}</span>
        </p>
      );
    }
    return (
      <main class="page">
        <div role="alert">
          <h1>This screen cannot be shown</h1>
        </div>
        <p>
          One of its records is not as it should be. Nothing was changed or deleted, and the rest of the app goes on.
          Save everything to a file before you do anything else.
        </p>
        <p class="soft">{why}</p>
        <p>
          <a class="quiet wide" href={hashOf({ screen: 'settings' })}>
            To the backup
          </a>
        </p>
        <p>
          <a class="quiet wide" href={hashOf({ screen: 'cars' })}>
            To the cars
          </a>
        </p>
      </main>
    );
  }
}
