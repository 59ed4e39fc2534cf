// Compares our schema stage with another validator (ajv, draft-07): every plan
// of the project, each of its sizes merged by RFC 7396, and mutants of them.
//
//	node check.mjs SCHEMA_PLAN SCHEMA_PROJECT VERDICTS_PROGRAM FOLDER_FOR_MUTANTS < list of files
//
// Everything about merging is written anew here, so that a mistake of ours
// does not hide itself.
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import Ajv from "ajv";

const [planSchema, projectSchema, program, folder] = process.argv.slice(2);
const MUTANTS_A_FILE = 40;

// strictTypes off: a property that may be a number or a string is meant.
const ajv = new Ajv({ strict: true, strictTypes: false, strictRequired: false, allErrors: false });
const accepts = {};
for (const [kind, path] of [["plan", planSchema], ["project", projectSchema]]) {
  const schema = JSON.parse(readFileSync(path, "utf8"));
  if (schema.$schema !== "http://json-schema.org/draft-07/schema#") throw new Error(`${kind}: not draft-07`);
  if (!ajv.validateSchema(schema)) throw new Error(`${kind}: ${ajv.errorsText()}`);
  accepts[kind] = ajv.compile(schema);
}

const isObject = (v) => v !== null && typeof v === "object" && !Array.isArray(v);

// RFC 7396, section 2.
function mergePatch(target, patch) {
  if (!isObject(patch)) return patch;
  const result = isObject(target) ? { ...target } : {};
  for (const [key, value] of Object.entries(patch)) {
    if (value === null) delete result[key];
    else result[key] = mergePatch(result[key], value);
  }
  return result;
}

const only = (v, key) => (!isObject(v) ? v : Object.hasOwn(v, key) ? { [key]: v[key] } : {});

// The recipe of one size, as DEVELOPERS.md says it is validated: the plan with
// the patch over it, "sizes" and "printed" left with this size alone. What is
// no object patches nothing: the plan is refused for it as it stands.
function merged(plan, size) {
  const patch = plan.sizes[size];
  const result = isObject(patch) ? mergePatch(plan, patch) : { ...plan };
  for (const key of ["sizes", "printed"]) if (Object.hasOwn(result, key)) result[key] = only(result[key], size);
  return result;
}

function expected(path) {
  const text = readFileSync(path, "utf8");
  const value = JSON.parse(text);
  if (basename(path) === "yardproof.json") return new Map([["", accepts.project(value)]]);
  const verdicts = new Map([["", accepts.plan(value)]]);
  if (isObject(value) && isObject(value.sizes)) {
    for (const size of Object.keys(value.sizes)) verdicts.set(size, accepts.plan(merged(value, size)));
  }
  return verdicts;
}

// compare gives how many documents of the files are valid, invalid, unread,
// and the differences.
function compare(files) {
  const tally = { valid: 0, invalid: 0, unread: 0, differ: [] };
  const out = execFileSync(program, { input: files.join("\n") + "\n", encoding: "utf8", maxBuffer: 1 << 28 });
  const others = new Map();
  let seen = 0;
  for (const line of out.trimEnd().split("\n")) {
    const [path, size, verdict] = line.split("\t");
    tally[verdict]++;
    if (verdict === "unread") continue; // wrong JSON: ajv never sees a range of bytes
    if (!others.has(path)) others.set(path, expected(path));
    const other = others.get(path).get(size);
    if (other === undefined || other !== (verdict === "valid")) {
      tally.differ.push(`${path} ${size && `size ${size} `}is ${verdict} to us, and ${other ? "valid" : "invalid"} to ajv`);
    }
    seen++;
  }
  const all = [...others.values()].reduce((n, v) => n + v.size, 0);
  if (all !== seen) tally.differ.push(`${seen} documents judged by us, ${all} by ajv`);
  return tally;
}

// every place of a document, as a list of keys.
function places(value, at = []) {
  if (value === null || typeof value !== "object") return [at];
  return [at, ...Object.entries(value).flatMap(([k, v]) => places(v, [...at, k]))];
}

// mutant exchanges, takes away or adds one value.
function mutant(value, at, change) {
  const copy = structuredClone(value);
  const parent = at.slice(0, -1).reduce((v, k) => v[k], copy);
  const key = at.at(-1);
  if (change === "remove") Array.isArray(parent) ? parent.splice(Number(key), 1) : delete parent[key];
  else if (change === "add") Array.isArray(parent) ? parent.push(parent[0]) : (parent["no-such-key"] = 1);
  else parent[key] = JSON.parse(change);
  return copy;
}

const CHANGES = ["remove", "add", "null", "0", "-1", "1e6", "2.5", '""', '"zz"', '"Zz 9"', '"1/4"', "true", "[]", "{}", '["a"]', "[[]]"];

// A fixed sequence, so that two runs try the same mutants.
let state = 7396;
const next = (n) => {
  state = (state * 48271) % 2147483647;
  return state % n;
};

function mutants(files) {
  const made = [];
  for (const path of files) {
    let value;
    try {
      value = JSON.parse(readFileSync(path, "utf8"));
    } catch {
      continue;
    }
    const all = places(value).slice(1);
    if (all.length === 0) continue;
    for (let i = 0; i < MUTANTS_A_FILE; i++) {
      const text = JSON.stringify(mutant(value, all[next(all.length)], CHANGES[next(CHANGES.length)]));
      // Two files are never of one name, but for the project's, which stands in a folder of its own.
      const name = basename(path) === "yardproof.json" ? null : `${made.length}.plan.json`;
      if (name === null) continue;
      made.push(join(folder, name));
      writeFileSync(made.at(-1), text);
    }
  }
  return made;
}

const files = readFileSync(0, "utf8").trimEnd().split("\n");
const own = compare(files);
const changed = compare(mutants(files));
for (const [what, t] of [["files and their sizes", own], ["mutants and their sizes", changed]]) {
  console.log(`${what}: ${t.valid} valid, ${t.invalid} invalid, ${t.unread} unread, ${t.differ.length} judged differently`);
  t.differ.slice(0, 20).forEach((d) => console.log("  " + d));
}
const few = own.valid < 50 || own.invalid < 10 || changed.valid < 500 || changed.invalid < 500;
if (few) console.log("too few documents: this compares next to nothing");
process.exit(few || own.differ.length + changed.differ.length > 0 ? 1 : 0);
