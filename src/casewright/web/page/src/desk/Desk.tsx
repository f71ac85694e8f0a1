import { useEffect } from "preact/hooks";
import { isSunny } from "../shop/theme";
import { job, reachable } from "../state";
import { steps } from "../route";
import { SolidPage } from "../solid/SolidPage";
import { Chapter } from "./Chapter";
import { Cases } from "./Cases";
import { CasePage } from "./CasePage";
import { Devices } from "./Devices";
import { Header } from "./Header";
import { Layout } from "./Layout";
import { Machine } from "./Machine";
import { Publish } from "./Publish";
import { Problems, Told } from "./Told";
import { WhyPanel } from "./Why";
import "./desk.css";

/** The desk: one page for each stage of the work, whatever is not there yet left out. */
export function Desk() {
  const found = job.value;
  const sunny = isSunny.value;
  useEffect(() => {
    document.documentElement.classList.toggle("sun", sunny);
    return () => document.documentElement.classList.remove("sun");
  }, [sunny]);
  if (found === null) {
    return (
      <main class="desk" aria-busy="true">
        <p class="waiting">{reachable.value ? "Working the job out …" : "No answer from the desk's server."}</p>
      </main>
    );
  }
  const [page = "", of = ""] = steps();
  return (
    <>
      <Header job={found} page={page} />
      <main class="desk" id="main" tabIndex={-1}>
        <Problems problems={found.problems} />
        <Shown page={page} of={of} />
      </main>
      <WhyPanel />
    </>
  );
}

function Shown({ page, of }: { page: string; of: string }) {
  switch (page) {
    case "":
    case "layout":
      return <Layout />;
    case "cases":
      return of === "" ? <Cases /> : <CasePage of={of} />;
    case "machine":
      return <Machine of={of} />;
    case "solid":
      return <SolidPage of={of} />;
    case "publish":
      return <Publish />;
    case "devices":
      return <Devices />;
    case "survey":
    case "buy":
    case "cut":
    case "assemble":
    case "fronts":
    case "finish":
    case "install":
      return (
        <>
          <Told page={page} />
          <Chapter page={page} />
        </>
      );
    default:
      return <p>There is no such page.</p>;
  }
}
