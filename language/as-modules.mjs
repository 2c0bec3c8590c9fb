/*
 * The packages of the editor's protocol come as CommonJS, of which a bundler can leave nothing out and whose every name
 * it must keep. What their compiler wrote is regular enough to be written back.
 */

/**
 * The same module as an ECMAScript module, of which a bundler keeps what is used; `undefined` where it holds something
 * that this does not know how to say.
 */
export function asModule(source) {
    const code = source
        .replace(/^"use strict";\n/, '')
        .replace(/^var (__\w+) = \(this && this\.\1\) \|\|[\s\S]*?^\}\)*(?:\(\))?\)?;\n/gm, '')
        .replace(/^Object\.defineProperty\(exports, "__esModule", \{ value: true \}\);\n/m, '')
        .replace(/^(?:exports\.\w+ = )+void 0;\n/gm, '');
    const namespaces =
        /^var (\w+);\n\(function \(\1\) \{\n([\s\S]*?)^\}\)\(\1 \|\| \(exports\.\1 = \1 = \{\}\)\);$/gm;
    const cameFrom = new Map();
    const exported = new Set();
    const written = code
        .replace(
            /^(?:const|var|let) (\w+) = (?:__import(?:Star|Default)\()?require\(("[^"]+")\)\)?;$/gm,
            (_, name, from) => {
                cameFrom.set(name, from);
                return `import * as ${name} from ${from};`;
            },
        )
        .replace(/^__exportStar\(require\(("[^"]+")\), exports\);$/gm, 'export * from $1;')
        .replace(
            /^Object\.defineProperty\(exports, "(\w+)", \{ enumerable: true, get: function \(\) \{ return (\w+)\.(\w+); \} \}\);$/gm,
            (whole, name, module, original) => {
                if (exported.has(name)) return '';
                exported.add(name);
                return cameFrom.has(module)
                    ? `export { ${original} as ${name} } from ${cameFrom.get(module)};`
                    : whole;
            },
        )
        .replace(/^exports\.default = (\w+);$/gm, 'export default $1;')
        .replace(namespaces, (whole, name, body) =>
            // Some are written in two parts.
            code.split(`(exports.${name} = `).length > 2 ? whole : pure(name, body),
        )
        .replace(/\(exports\.(\w+) = \1 = \{\}\)/g, (_, name) => {
            exported.add(name);
            return `(${name} = {})`;
        })
        .replace(/^exports\.(\w+) = \1;\n/gm, (_, name) => {
            exported.add(name);
            return '';
        })
        .replace(/^exports\.(\w+) = /gm, 'export const $1 = ')
        .replace(/\bexports\.(\w+)/g, '$1');
    if (/\b(exports|require)\b[.([,]/.test(written.replace(/^\s*(\/\/|\*).*$/gm, ''))) return undefined;
    const local = [...exported].filter(
        (name) => !new RegExp(`^export \\{ \\w+ as ${name} \\} from `, 'm').test(written),
    );
    return local.length > 0 ? `${written}\nexport { ${local.join(', ')} };\n` : written;
}

/** A namespace of constants and functions, made without touching anything else. */
export function pure(name, body) {
    return `export const ${name} = /* @__PURE__ */ (function (${name}) {\n${body}    return ${name};\n})({});`;
}
