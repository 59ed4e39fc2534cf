// Asks the JSON language service that editors use about a repository that
// `yardproof init` has laid.
//
//	node check.mjs REPOSITORY
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { getLanguageService } from "vscode-json-languageservice";
import { TextDocument } from "vscode-languageserver-textdocument";
import { parse } from "yaml";

const root = resolve(process.argv[2]);
const failures = [];
const expect = (holds, what) => {
  if (!holds) failures.push(what);
};

// Only files are read, and which ones is remembered.
const asked = [];
async function request(uri) {
  asked.push(uri);
  if (!uri.startsWith("file:")) throw new Error(`${uri} is not here`);
  return readFileSync(fileURLToPath(uri), "utf8");
}

const service = getLanguageService({
  schemaRequestService: request,
  workspaceContext: { resolveRelativePath: (path, resource) => new URL(path, resource).href },
});

// As an editor reads the settings that lie in the repository.
const settings = JSON.parse(readFileSync(join(root, ".vscode/settings.json"), "utf8"));
service.configure({
  validate: true,
  schemas: settings["json.schemas"].map(({ fileMatch, url }) => ({
    fileMatch,
    uri: new URL(url, pathToFileURL(root + "/")).href,
  })),
});

function open(path, text = readFileSync(join(root, path), "utf8")) {
  const document = TextDocument.create(pathToFileURL(join(root, path)).href, "json", 1, text);
  return { document, tree: service.parseJSONDocument(document), text };
}

const words = (marked) => (typeof marked === "string" ? marked : (marked?.value ?? ""));

async function completions(path, text) {
  const offset = text.indexOf("|");
  const { document, tree } = open(path, text.replace("|", ""));
  const list = await service.doComplete(document, document.positionAt(offset), tree);
  return new Map((list?.items ?? []).map((i) => [i.label, words(i.documentation)]));
}

async function hover(file, offset) {
  const found = await service.doHover(file.document, file.document.positionAt(offset), file.tree);
  return (found ? [found.contents].flat() : []).map(words).join(" ");
}

// Nothing is wrong with any file, and every key of each explains itself.
const plans = readdirSync(join(root, "plans")).map((name) => join("plans", name));
let keys = 0;
for (const path of [...plans, "yardproof.json"]) {
  const file = open(path);
  for (const d of await service.doValidation(file.document, file.tree)) failures.push(`${path}: ${d.message}`);
  const visit = async (node) => {
    if (node.type === "property") {
      keys++;
      const text = await hover(file, node.keyNode.offset + 1);
      expect(text.length > 10, `${path}: no words on ${node.keyNode.value} at ${JSON.stringify(service.getMatchingSchemas ? node.keyNode.offset : 0)}`);
    }
    for (const child of node.children ?? []) await visit(child);
  };
  await visit(file.tree.root);
}
expect(plans.length >= 8 && keys > 500, `only ${keys} keys in ${plans.length} plans`);

// What can come next is offered, with what it means.
const top = await completions("plans/new.plan.json", '{ "format": 1, | }');
for (const key of ["id", "title", "units", "seam", "fabrics", "parts", "layout", "finish", "sizes", "printed", "kit"]) {
  expect(top.get(key)?.length > 10, `${key} is not offered with its meaning: ${top.get(key)}`);
}
const part = await completions("plans/new.plan.json", '{ "parts": { "block": { | } } }');
for (const key of ["cut", "strip_set", "tube", "half_squares", "triangle_square", "rows", "note"]) {
  expect(part.get(key)?.length > 10, `${key} is not offered for a part: ${part.get(key)}`);
}
const offered = async (text, ...want) => {
  const got = await completions("plans/new.plan.json", text);
  for (const w of want) expect(got.has(w), `${text} does not offer ${w}, but ${[...got.keys()]}`);
};
await offered('{ "units": | }', '"in"', '"cm"');
await offered('{ "status": | }', '"draft"', '"testing"', '"published"');
await offered('{ "seam": { "stitch": | } }', '"301"', '"514"');
await offered('{ "cautions": [ | ] }', '"rotary-cutter"', '"iron"', '"bias-edges"');
await offered('{ "parts": { "step": { "tube": { | } } } }', "sets", "tip", "ends", "trim");
await offered('{ "layout": { "borders": { "edge": { | } } } }', "fabric", "width", "joins");
await offered('{ "sizes": { "wall": { | } } }', "layout", "finish", "kit");
await offered('{ "sizes": { "wall": { "layout": { | } } } }', "grid", "borders");
await offered('{ "sizes": { "wall": { "kit": { | } } } }', "minutes", "price");
const project = await completions("yardproof.json", '{ "format": 1, | }');
for (const key of ["currency", "prices", "rulers", "rules", "exceptions", "defaults"]) {
  expect(project.get(key)?.length > 10, `${key} is not offered for the project: ${project.get(key)}`);
}

// Mistakes are marked where they are.
const marked = async (text, at) => {
  const { document, tree } = open("plans/new.plan.json", text);
  const found = await service.doValidation(document, tree);
  expect(found.some((d) => document.getText(d.range).includes(at)), `nothing is marked at ${at}: ${JSON.stringify(found.map((d) => d.message))}`);
};
await marked('{ "units": "mm" }', '"mm"');
await marked('{ "titel": "x" }', "titel");
await marked('{ "parts": { "a": { "cut": { "fabric": "x", "sqare": 4 } } } }', "sqare");

// A first line that says where the schema is does for editors without settings.
service.configure({ validate: true, schemas: [] });
service.resetSchema(pathToFileURL(join(root, "schemas/plan.schema.json")).href);
const named = await completions("plans/new.plan.json", '{ "$schema": "../schemas/plan.schema.json", | }');
expect(named.get("fabrics")?.length > 10, "a plan that names its schema is not completed");
const plan = open(plans[0]);
const with$schema = open(plans[0], plan.text.replace("{", '{ "$schema": "../schemas/plan.schema.json",'));
for (const d of await service.doValidation(with$schema.document, with$schema.tree)) failures.push(`with $schema: ${d.message}`);

// Nothing but the repository's own files was asked for.
const own = pathToFileURL(root + "/").href;
for (const uri of asked) expect(uri.startsWith(own), `it asks for ${uri}`);
expect(asked.length >= 2, "no schema was read at all");

// The CI files: YAML, with the steps that are meant.
const hub = parse(readFileSync(join(root, ".github/workflows/plans.yml"), "utf8"));
const runs = hub.jobs.prove.steps.map((s) => s.run ?? "");
const lab = parse(readFileSync(join(root, ".gitlab-ci.yml"), "utf8"));
for (const [name, steps] of [["workflow", runs], ["gitlab-ci", lab.plans.script]]) {
  const text = steps.join("\n");
  for (const want of ["ci/fetch-yardproof", "yardproof check .", "yardproof fmt --check .", "yardproof export plans"]) {
    expect(text.includes(want), `the ${name} does not ${want}`);
  }
  expect(!/https?:|apt-get|npm |pip /.test(text), `the ${name} fetches something else`);
}
expect(hub.permissions.contents === "read" && Object.keys(hub.permissions).length === 1, "the workflow may do more than read");
expect(existsSync(join(root, "ci/fetch-yardproof")), "no ci/fetch-yardproof");

console.log(`${keys} keys in ${plans.length} plans and the project file; ${asked.length} schemas read; ${failures.length} complaints`);
failures.slice(0, 30).forEach((f) => console.log("  " + f));
process.exit(failures.length > 0 ? 1 : 0);
