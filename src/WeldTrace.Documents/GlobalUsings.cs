// One word for the units of a site, in the records, on screen and on paper.
global using UnitSystem = WeldTrace.Domain.Sites.UnitSystem;
