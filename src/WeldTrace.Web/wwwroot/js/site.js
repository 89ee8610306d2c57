import "./notices.js";
