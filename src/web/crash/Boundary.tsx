import { Component, type ErrorInfo, type ReactNode } from "react";

interface Props {
  /** What the part is called to the maker: the question's heading, "the page" ... */
  readonly what: string;
  /** When this changes (another design, another answer) the part is tried again. */
  readonly retryWhen?: unknown;
  readonly children: ReactNode;
}

interface State {
  readonly failure: Error | null;
}

/**
 * Keeps a failure inside one part of the page: the others live on. Says what failed, offers to try
 * again, and leads to the designs as they are kept.
 */
export class Boundary extends Component<Props, State> {
  override state: State = { failure: null };

  static getDerivedStateFromError(failure: Error): State {
    return { failure };
  }

  override componentDidCatch(failure: Error, info: ErrorInfo): void {
    console.error(`${this.props.what} failed`, failure, info.componentStack);
  }

  override componentDidUpdate(before: Props): void {
    if (this.state.failure && before.retryWhen !== this.props.retryWhen) this.tryAgain();
  }

  private tryAgain = (): void => this.setState({ failure: null });

  override render(): ReactNode {
    const { failure } = this.state;
    if (!failure) return this.props.children;
    return (
      <div role="alert" className="failed">
        <p>
          Something in “{this.props.what}” failed: {failure.message}. The rest of the page goes on,
          and your design is not touched.
        </p>
        <p>
          <button type="button" onClick={this.tryAgain}>
            Try again
          </button>{" "}
          <a href="./crash.html">See your designs as they are kept</a>
        </p>
      </div>
    );
  }
}
