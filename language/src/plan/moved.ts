import type { Back, Spread } from './model.ts';

/** A plan with one line let back to another place; the plan itself where it has no such line. */
export function moved(plan: Spread, position: string, back: Back): Spread {
    const lines = plan.lines.map((line) => (line.position.name === position ? { ...line, back } : line));
    return { ...plan, lines };
}
