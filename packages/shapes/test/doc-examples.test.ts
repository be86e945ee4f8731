import * as measure from "@sheetwright/measure";
import { testDocExamples, testReadme } from "../../measure/test/check-doc-examples.js";
import * as shapes from "../src/index.js";
import * as svg from "../src/svg/index.js";

testDocExamples(new URL("../src/", import.meta.url), { ...shapes, ...svg });
testReadme(new URL("../README.md", import.meta.url), { ...measure, ...shapes, ...svg });
