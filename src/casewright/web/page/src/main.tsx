import { render } from "preact";
import { Page } from "./Page";
import { listen } from "./news";
import { followLinks } from "./route";
import { refresh } from "./state";
import "./style.css";

const root = document.getElementById("page");
if (root !== null) {
  followLinks(root);
  render(<Page />, root);
  void refresh().finally(listen);
}
