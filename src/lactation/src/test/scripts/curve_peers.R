# Fits of R beside which ours are held (CurveFitPeerTest, OtherHerdPeerTest). Prints 12 significant digits.
# Usage: Rscript curve_peers.R        needs r-base-core and r-cran-nlme
options(digits = 12, width = 160)
cat(R.version.string, "; nlme", as.character(packageVersion("nlme")), "\n")
show <- function(name, m) {
  s <- summary(m)
  cat("\n==", name, "\nparameters", format(unname(coef(m)), digits = 12), "\nstandard errors", format(unname(s$coefficients[, 2]), digits = 12),
      "\nrss", format(sum(resid(m)^2), digits = 12), "sigma", format(s$sigma, digits = 12),
      "\nAIC", format(AIC(m), digits = 12), "BIC", format(BIC(m), digits = 12), "\n")
  if (inherits(m, "lm")) cat("rstudent", format(unname(rstudent(m)), digits = 12), "\n")
}
tight <- nls.control(maxiter = 500, tol = 1e-6, minFactor = 1e-12)

# series C01 of the open reference set (days in milk, kg)
t <- c(15, 45, 72, 103, 132, 165, 192, 227, 258, 283)
y <- c(23.656, 28.23, 28.291, 27.473, 25.668, 24.293, 21.667, 23.001, 17.844, 19.671)
show("Wood", nls(y ~ a * t^b * exp(-c * t), start = list(a = 14, b = 0.2, c = 0.003), control = tight))
show("Wilmink", lm(y ~ I(exp(-0.05 * t)) + t))
show("Wood on logarithms (ln a, b, c)", lm(log(y) ~ log(t) + I(-t)))
show("Wilmink free rate (a, b, c, k)", nls(y ~ a + b * exp(-k * t) + c * t, start = list(a = 31, b = -16, c = -0.045, k = 0.04), control = tight))
show("Nelder", nls(y ~ t / (a + b * t + c * t^2), start = list(a = 0.3, b = 0.02, c = 1e-4), control = tight))
show("Cobby and Le Du", nls(y ~ a - b * t - a * exp(-c * t), start = list(a = 30, b = 0.04, c = 0.05), control = tight))
show("Guo and Swalve", lm(y ~ I(sqrt(t)) + log(t)))
g <- t / 305; w <- log(305 / t)
show("Ali and Schaeffer", lm(y ~ g + I(g^2) + w + I(w^2)))
wood <- nls(y ~ a * t^b * exp(-c * t), start = list(a = 14, b = 0.2, c = 0.003), control = tight)
V <- vcov(wood); p <- coef(wood); pk <- p["b"] / p["c"]
d1 <- c(0, 1 / p["c"], -p["b"] / p["c"]^2); f <- p["a"] * pk^p["b"] * exp(-p["c"] * pk); d2 <- c(f / p["a"], f * log(pk), -f * pk)
cat("\nWood peak", format(unname(c(pk, f)), digits = 12), "standard errors", format(c(sqrt(d1 %*% V %*% d1), sqrt(d2 %*% V %*% d2)), digits = 12), "\n")

# another herd and another trait: protein of cow B01 of nlme's Milk (percent; weeks since calving)
m <- subset(as.data.frame(nlme::Milk), Cow == "B01"); t <- m$Time; y <- m$protein
cat("\nnlme Milk, cow B01\nweeks", t, "\nprotein", y, "\n")
show("B01 Wood", nls(y ~ a * t^b * exp(-c * t), start = list(a = 3.5, b = -0.1, c = -0.01), control = tight))
show("B01 Wilmink", lm(y ~ I(exp(-0.05 * t)) + t))
show("B01 Guo and Swalve", lm(y ~ I(sqrt(t)) + log(t)))
