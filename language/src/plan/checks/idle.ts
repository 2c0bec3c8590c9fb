import type { AstNode } from 'langium';
import type { Definition, Removal } from '../../../grammar/generated/ast.ts';
import type { Finding } from '../finding.ts';
import { placeOf } from '../place.ts';
import { baseOf, type Gathered, gather } from '../resolve/gather.ts';
import { isRearrangement, rearrange, type Slot, type Table } from '../resolve/table.ts';
import { problem } from './problem.ts';
import { checkRemoval } from './words.ts';

/** `no`, `without` and `swap` that find nothing in the preset to act on, in a definition and the blocks in it. */
export function checkIdle(definition: Definition, gathered: Gathered): Finding[] {
    const base = baseOf(definition);
    return idleIn(definition.entries ?? [], base && gather(base, gathered));
}

function idleIn(entries: readonly AstNode[], below: Table | undefined): Finding[] {
    const rest = new Map<string, readonly Slot[]>(below);
    const found: Finding[] = [];
    for (const entry of entries) {
        // A word that the block never has is said to be that, and once.
        const isUnknown = entry.$type === 'Removal' && checkRemoval(entry as Removal) !== undefined;
        if (isRearrangement(entry) && !rearrange(rest, entry) && !isUnknown)
            found.push(idle(entry, below !== undefined));
    }
    return found;
}

function idle(entry: AstNode, hasPreset: boolean): Finding {
    const at = placeOf(entry);
    const written = entry.$cstNode?.text ?? '';
    return problem('preset-idle', at, {
        severity: 'warning',
        what: hasPreset
            ? `\`${written}\` finds nothing to act on in the preset.`
            : `\`${written}\` has no preset to act on.`,
        why: 'It does nothing, so the plan may not be what it looks like.',
        remedy: hasPreset
            ? 'Take it out, or look at what the preset has.'
            : 'Take it out, or name a preset with `like`.',
        fixes: [{ title: 'Take it out', edits: [{ at, text: '' }] }],
        unnecessary: true,
    });
}
