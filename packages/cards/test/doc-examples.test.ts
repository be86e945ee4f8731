import { cardSizes } from "@sheetwright/measure";
import { testDocExamples, testReadme } from "../../measure/test/check-doc-examples.js";
import * as cards from "../src/index.js";

// The examples take their named cards from the package of sizes.
const scope = { ...cards, cardSizes };

testDocExamples(new URL("../src/", import.meta.url), scope);
testReadme(new URL("../README.md", import.meta.url), scope);
