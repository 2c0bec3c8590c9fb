import { viewNames, views } from './views.ts';

/** Where the parts of the page are, as the page can ask for them. */
export interface PageParts {
    readonly script: string;
    readonly style: string;
    /** Where the editor lets a page ask for files at all. */
    readonly source: string;
    /** Unguessable, and another one for every page. */
    readonly nonce: string;
}

const radios = views
    .map((view, index) => {
        const first = index === 0;
        return `<button type="button" role="radio" id="show-${view}" aria-checked="${first}"${first ? '' : ' tabindex="-1"'}>${viewNames[view]}</button>`;
    })
    .join('\n');

/** The page inside the panel: it runs one script, loads one style sheet, and can ask for nothing else. */
export function page({ script, style, source, nonce }: PageParts): string {
    const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src ${source}; base-uri 'none'; form-action 'none'`;
    return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${inAttribute(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${inAttribute(style)}">
<title>Diagram</title>
</head>
<body>
<main id="all">
<div id="bar" role="toolbar" aria-label="Diagram">
<div id="views" role="radiogroup" aria-label="What is shown">
${radios}
</div>
<div id="tools">
<button type="button" id="as-table" aria-pressed="false" title="The same in words">Table</button>
<div id="zoom" role="group" aria-label="Zoom">
<button type="button" id="zoom-out" aria-label="Zoom out" title="Zoom out (−)">−</button>
<button type="button" id="zoom-fit" title="Show all of it (0)">Fit</button>
<button type="button" id="zoom-in" aria-label="Zoom in" title="Zoom in (+)">+</button>
</div>
</div>
</div>
<div id="choices" role="group" hidden></div>
<div id="scene">
<div id="banner" role="status" hidden></div>
<div id="stage" aria-busy="true"></div>
<section id="trial" role="status" aria-label="What would follow" hidden></section>
<section id="table" aria-label="The same in words"></section>
</div>
<section id="player" aria-label="Through the turn" hidden></section>
<p id="caution"></p>
<section id="words" aria-live="polite"></section>
</main>
<script nonce="${nonce}" src="${inAttribute(script)}"></script>
</body>
</html>
`;
}

function inAttribute(text: string): string {
    return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');
}
