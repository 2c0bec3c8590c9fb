import type { TurnLimit } from './figures.ts';
import { listed } from './wording.ts';

/** What goes wrong in a turn that is tighter than the tightest clean one: `shotgun falls slack`. */
export function limitWords({ kind, lines }: TurnLimit): string {
    const names = listed(lines.map(({ line }) => line.position.name));
    switch (kind) {
        case 'foul':
            return `${names} touch`;
        case 'slack':
            return `${names} falls slack`;
        case 'slow':
            return `${names} runs slower than it works`;
        case 'unsettled':
            return `whether ${names} touch would take too long to find`;
    }
}
