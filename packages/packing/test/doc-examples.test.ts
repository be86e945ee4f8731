import { testDocExamples, testReadme } from "../../measure/test/check-doc-examples.js";
import * as packing from "../src/index.js";

testDocExamples(new URL("../src/", import.meta.url), packing);
testReadme(new URL("../README.md", import.meta.url), packing);
