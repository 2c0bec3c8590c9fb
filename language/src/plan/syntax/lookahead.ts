import { type ILookaheadStrategy, LLkLookaheadStrategy } from 'chevrotain';

/** As the parser calls it: on itself, with what its kind of decision takes. */
type Decide = (this: never, ...given: never[]) => never;

/**
 * Works out how to decide between alternatives when the parser first comes to them. A plan comes to few of the
 * grammar's decisions, and a command that starts for one plan need not prepare for all.
 */
export function lazyLookahead(maxLookahead: number): ILookaheadStrategy {
    const eager: ILookaheadStrategy = new LLkLookaheadStrategy({ maxLookahead });
    const strategy = Object.create(eager) as ILookaheadStrategy;
    strategy.buildLookaheadForAlternation = (options) =>
        whenAsked(() => eager.buildLookaheadForAlternation(options) as unknown as Decide) as never;
    strategy.buildLookaheadForOptional = (options) =>
        whenAsked(() => eager.buildLookaheadForOptional(options) as unknown as Decide) as never;
    return strategy;
}

function whenAsked(build: () => Decide): Decide {
    let decide: Decide | undefined;
    return function (...given) {
        decide ??= build();
        return decide.apply(this, given);
    };
}
