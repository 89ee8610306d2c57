// The one script of every page; the rest is loaded from here, the chart and the picture only where there is one.
import { onPage } from "./page.js";
import { watchPosts } from "./posts.js";
import { watchDrafts, restoreDrafts } from "./drafts.js";
import { watchScanner, focusScanField } from "./scanner.js";
import { watchDialogs, openDialogs } from "./dialogs.js";
import { echoDates } from "./dates.js";
import { watchConnection } from "./connection.js";
import { watchFigures } from "./figures.js";
import { watchUploads } from "./uploads.js";
import { watchWork } from "./watch.js";
import { startHoldClock } from "./holdclock.js";
import { watchPlaces } from "./places.js";
import { watchPasskeys, offerPasskeys } from "./passkeys.js";

watchPosts();
watchDrafts();
watchScanner();
watchDialogs();
watchConnection();
watchUploads();
watchFigures();
watchPlaces();
watchPasskeys();

onPage(() => {
  restoreDrafts();
  openDialogs();
  echoDates();
  document.querySelector("[data-error-summary]")?.focus();
  focusScanField();
  watchWork();
  startHoldClock();
  offerPasskeys();
  if (document.querySelector("[data-chart]")) {
    import("./chart.js").then((chart) => chart.drawCharts());
  }
  if (document.querySelector("[data-genealogy]")) {
    import("./genealogy.js").then((genealogy) => genealogy.walkGenealogies());
  }
  if (document.querySelector("[data-picture]")) {
    import("./picture.js").then((picture) => picture.showPictures());
  }
});
