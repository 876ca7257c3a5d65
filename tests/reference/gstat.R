# Makes the reference tables of this folder with R's packages gstat and sp. Run once by hand, from this folder:
#   Rscript gstat.R
# The tables are committed; neither the tests nor continuous integration run R. Versions and settings are in gstat.json.
suppressPackageStartupMessages({ library(sp); library(gstat) })
options(digits = 15)

csv <- function(frame, name) {
  frame[] <- lapply(frame, function(column) if (is.numeric(column)) formatC(column, digits = 12, format = "g", width = -1) else column)
  write.csv(frame, name, row.names = FALSE, quote = FALSE)
}
out <- list()
number <- function(x) sprintf("[%s]", paste(formatC(x, digits = 15, format = "g", width = -1), collapse = ", "))

# Seven points of Isaaks & Srivastava (1989), chapters 11 and 12.
seven <- data.frame(x = c(61, 63, 64, 68, 71, 73, 75), y = c(139, 140, 129, 128, 140, 141, 128), v = c(477, 696, 227, 646, 606, 791, 783))
target <- data.frame(x = 65, y = 137)
coordinates(seven) <- ~x+y; coordinates(target) <- ~x+y
exponential <- vgm(10, "Exp", 1 / 0.3, 0)
gaussian <- vgm(10, "Gau", 10 / sqrt(3), 0)
for (name in c("exponential", "gaussian")) {
  k <- krige(v ~ 1, seven, target, get(name), debug.level = 0)
  out[[paste0("seven.", name)]] <- number(c(k$var1.pred, k$var1.var))
  # Kriging is linear: the weight of a point is the estimate where it alone is 1.
  out[[paste0("seven.", name, ".weights")]] <- number(sapply(seq_along(seven$v), function(i) {
    seven$one <- as.numeric(seq_along(seven$v) == i)
    krige(one ~ 1, seven, target, get(name), debug.level = 0)$var1.pred
  }))
}
four <- data.frame(x = c(-2.5, -2.5, 2.5, 2.5), y = c(-2.5, 2.5, -2.5, 2.5)); coordinates(four) <- ~x+y
hundred <- expand.grid(x = seq(-4.5, 4.5, 1), y = seq(-4.5, 4.5, 1)); coordinates(hundred) <- ~x+y
for (name in c("four", "hundred")) {
  k <- predict(gstat(NULL, "v", v ~ 1, seven, model = exponential), target, block = as.data.frame(coordinates(get(name))), debug.level = 0)
  out[[paste0("seven.block.", name)]] <- number(c(k[[1]], k[[2]]))
}
# The same by the equations of kriging themselves: gstat's block of a hundred is 5e-7 off them, its block of four is not.
distances <- function(a, b) sqrt(outer(a[, 1], b[, 1], "-")^2 + outer(a[, 2], b[, 2], "-")^2)
covariance <- function(a, b) 10 * exp(-0.3 * distances(a, b))
for (name in c("four", "hundred")) {
  block <- sweep(coordinates(get(name)), 2, c(65, 137), "+")
  beside <- c(rowMeans(covariance(coordinates(seven), block)), 1)
  weights <- solve(rbind(cbind(covariance(coordinates(seven), coordinates(seven)), 1), c(rep(1, 7), 0)), beside)
  out[[paste0("seven.block.", name, ".direct")]] <- number(c(sum(weights[1:7] * seven$v), mean(covariance(block, block)) - sum(weights * beside)))
}
for (p in 1:2) out[[paste0("seven.inverseDistance.", p)]] <- number(idw(v ~ 1, seven, target, idp = p, debug.level = 0)$var1.pred)

# Zinc in the topsoil of a flood plain of the river Meuse (Burrough & McDonnell 1998), as it comes with sp.
data(meuse); data(meuse.grid)
csv(data.frame(x = meuse$x, y = meuse$y, zinc = meuse$zinc, dist = meuse$dist), "meuse.csv")
csv(data.frame(x = meuse.grid$x, y = meuse.grid$y, dist = meuse.grid$dist), "meuseGrid.csv")
coordinates(meuse) <- ~x+y; coordinates(meuse.grid) <- ~x+y
empirical <- variogram(log(zinc) ~ 1, meuse)
csv(data.frame(pairs = empirical$np, distance = empirical$dist, semivariance = empirical$gamma), "meuseVariogram.csv")
fitted <- fit.variogram(empirical, vgm(1, "Sph", 900, 1))
out[["meuse.fit"]] <- number(c(fitted$psill[1], fitted$psill[2], fitted$range[2]))
out[["meuse.fit.misfit"]] <- number(attr(fitted, "SSErr"))
points <- data.frame(x = c(180000, 181180), y = c(331000, 333740)); coordinates(points) <- ~x+y
k <- krige(log(zinc) ~ 1, meuse, points, fitted, debug.level = 0)
out[["meuse.points"]] <- number(c(k$var1.pred[1], k$var1.var[1], k$var1.pred[2], k$var1.var[2]))
k <- krige(log(zinc) ~ 1, meuse, meuse.grid, fitted, debug.level = 0)
out[["meuse.grid"]] <- number(c(mean(k$var1.pred), mean(k$var1.var)))
cv <- krige.cv(log(zinc) ~ 1, meuse, fitted, verbose = FALSE, debug.level = 0)
csv(data.frame(predicted = cv$var1.pred, variance = cv$var1.var), "meuseLeaveOneOut.csv")
out[["meuse.leaveOneOut"]] <- number(c(sqrt(mean(cv$residual^2)), mean(cv$residual), mean(abs(cv$residual)), mean(cv$zscore^2)))
cv <- krige.cv(log(zinc) ~ 1, meuse, nfold = nrow(meuse), set = list(idp = 2), verbose = FALSE, debug.level = 0)
out[["meuse.leaveOneOut.inverseDistance"]] <- number(sqrt(mean(cv$residual^2)))

# With a trend: universal kriging on the square root of the distance to the river.
empirical <- variogram(log(zinc) ~ sqrt(dist), meuse)
fitted <- fit.variogram(empirical, vgm(1, "Exp", 300, 1))
out[["meuse.trend.fit"]] <- number(c(fitted$psill[1], fitted$psill[2], fitted$range[2]))
out[["meuse.trend.fit.misfit"]] <- number(attr(fitted, "SSErr"))
k <- krige(log(zinc) ~ sqrt(dist), meuse, meuse.grid, fitted, debug.level = 0)
csv(data.frame(predicted = k$var1.pred, variance = k$var1.var)[seq(1, nrow(k), 50), ], "meuseTrendGrid.csv")
out[["meuse.trend.grid"]] <- number(c(mean(k$var1.pred), mean(k$var1.var)))
cv <- krige.cv(log(zinc) ~ sqrt(dist), meuse, fitted, verbose = FALSE, debug.level = 0)
csv(data.frame(predicted = cv$var1.pred, variance = cv$var1.var), "meuseTrendLeaveOneOut.csv")
out[["meuse.trend.leaveOneOut"]] <- number(c(sqrt(mean(cv$residual^2)), mean(cv$zscore^2)))

# Values with a measurement variance of their own, apart from the nugget.
noisy <- krige(log(zinc) ~ 1, meuse, points, vgm(0.55, "Exp", 400, 0.03, add.to = vgm(0.04, "Err", 0)), debug.level = 0)
out[["meuse.noise"]] <- number(c(noisy$var1.pred[1], noisy$var1.var[1], noisy$var1.pred[2], noisy$var1.var[2]))

# Cadmium in the topsoil of the Swiss Jura (Goovaerts 1997), predicted at the validation points; coal ash (Cressie 1993).
data(jura); data(coalash)
csv(data.frame(x = jura.pred$Xloc, y = jura.pred$Yloc, cadmium = jura.pred$Cd), "jura.csv")
csv(data.frame(x = jura.val$Xloc, y = jura.val$Yloc, cadmium = jura.val$Cd), "juraValidation.csv")
csv(data.frame(x = coalash$x, y = coalash$y, ash = coalash$coalash), "coalash.csv")
coordinates(jura.pred) <- ~Xloc+Yloc; coordinates(jura.val) <- ~Xloc+Yloc; coordinates(coalash) <- ~x+y
k <- krige(log(Cd) ~ 1, jura.pred, jura.val, vgm(0.3, "Sph", 1, 0.2), debug.level = 0)
error <- k$var1.pred - log(jura.val$Cd)
out[["jura.validation"]] <- number(c(sqrt(mean(error^2)), mean(error), mean(error^2 / k$var1.var)))
csv(data.frame(predicted = k$var1.pred, variance = k$var1.var), "juraKriged.csv")
cv <- krige.cv(coalash ~ 1, coalash, vgm(0.6, "Sph", 6, 0.8), verbose = FALSE, debug.level = 0)
csv(data.frame(predicted = cv$var1.pred, variance = cv$var1.var), "coalashLeaveOneOut.csv")
out[["coalash.leaveOneOut"]] <- number(c(sqrt(mean(cv$residual^2)), mean(cv$zscore^2)))

settings <- c(
  sprintf('  "made": { "R": "%s", "gstat": "%s", "sp": "%s" }', as.character(getRversion()), as.character(packageVersion("gstat")), as.character(packageVersion("sp"))),
  sprintf('  "settings": { "meuse.variogram": "variogram(log(zinc) ~ 1, meuse), cutoff %s, width %s", "meuse.fit": "fit.variogram(v, vgm(1, \\"Sph\\", 900, 1)), weights N/h^2 (fit.method 7)" }',
    formatC(spDists(t(bbox(meuse)))[1, 2] / 3, digits = 12, format = "fg"), formatC(spDists(t(bbox(meuse)))[1, 2] / 45, digits = 12, format = "fg")),
  sprintf('  "%s": %s', names(out), unlist(out)))
writeLines(c("{", paste(settings, collapse = ",\n"), "}"), "gstat.json")
