import {
    type Diagnostic,
    type DiagnosticRelatedInformation,
    DiagnosticSeverity,
    DiagnosticTag,
} from 'vscode-languageserver';
import { type Finding, messageOf } from '../plan/finding.ts';
import { LIBRARY_SCHEME } from '../plan/names/uses.ts';
import { startOf } from '../plan/place.ts';
import { ruleNamed } from '../rules/registry.ts';
import { textCodeNamed } from '../rules/text-codes.ts';
import type { Refusal } from './reading.ts';

/** The name under which an editor shows our findings. */
export const source = 'layback';

/** A finding as an editor shows it. */
export function diagnosticOf(finding: Finding, uri: string, from = source): Diagnostic {
    const here = finding.at.uri === uri;
    // A place in another file cannot be underlined in this one; it is the first thing to look at all the same.
    const related = [...(here ? [] : [{ at: finding.at, what: 'It is said here.' }]), ...finding.related];
    return {
        range: here ? finding.at.range : startOf(uri).range,
        severity: severities[finding.severity],
        code: finding.rule,
        source: from,
        message: messageOf(finding),
        ...(hasPage(finding.rule) && { codeDescription: { href: pageAddress(finding.rule) } }),
        ...(related.length > 0 && {
            relatedInformation: related.map(
                ({ at, what }): DiagnosticRelatedInformation => ({
                    location: { uri: at.uri, range: at.range },
                    message: what,
                }),
            ),
        }),
        ...(finding.unnecessary && { tags: [DiagnosticTag.Unnecessary] }),
    };
}

function hasPage(code: string): boolean {
    return (ruleNamed(code) ?? textCodeNamed(code)) !== undefined;
}

/** Where the page of a rule is read: a document that the server itself provides. */
export function pageAddress(rule: string): string {
    return `${LIBRARY_SCHEME}:/rules/${rule}.md`;
}

/** What is wrong with a file that is not read at all, at its beginning. */
export function findingAbout({ rule, reason, remedy }: Refusal, uri: string): Finding | undefined {
    if (!rule) return undefined;
    return {
        rule,
        severity: 'error',
        at: startOf(uri),
        what: `The file ${reason}.`,
        ...(remedy && { remedy }),
        related: [],
        fixes: [],
        positions: [],
    };
}

// A hint of ours is house style, worth a line in the list of problems: the protocol's hint would not get one.
const severities: Readonly<Record<Finding['severity'], DiagnosticSeverity>> = {
    error: DiagnosticSeverity.Error,
    warning: DiagnosticSeverity.Warning,
    hint: DiagnosticSeverity.Information,
};
