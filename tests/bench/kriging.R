# Times gstat on the data of a JSON-free text file: `Rscript kriging.R DATA`. Written for tests/bench/krigingPeer.ts, which makes the
# file: line 1: n, m, nugget, sill, range, rounds; then n lines x y z; then m lines x y. Prints the median milliseconds of CPU of
# kriging m points and of leaving one out of n, then mean and variance at each point, %.15g.
suppressPackageStartupMessages({ library(sp); library(gstat) })
input <- scan(commandArgs(TRUE)[1], quiet = TRUE)
n <- input[1]; m <- input[2]; rounds <- input[6]
data <- as.data.frame(matrix(input[7:(6 + 3 * n)], ncol = 3, byrow = TRUE)); names(data) <- c("x", "y", "z")
points <- as.data.frame(matrix(input[(7 + 3 * n):length(input)], ncol = 2, byrow = TRUE)); names(points) <- c("x", "y")
coordinates(data) <- ~x+y; coordinates(points) <- ~x+y
model <- vgm(input[4], "Exp", input[5], input[3])
ms <- function(expression) median(sapply(seq_len(rounds), function(i) 1000 * sum(system.time(eval(expression))[1:2])))
kriged <- krige(z ~ 1, data, points, model, debug.level = 0)
cat(sprintf("%.6g %.6g\n", ms(quote(krige(z ~ 1, data, points, model, debug.level = 0))),
  ms(quote(krige.cv(z ~ 1, data, model, verbose = FALSE, debug.level = 0)))))
writeLines(sprintf("%.15g %.15g", kriged$var1.pred, kriged$var1.var))
