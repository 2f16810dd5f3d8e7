/*
 * The inner loop of server/linkage (position.ts, solve-travel.ts) in C, statement for statement, to measure what the
 * TypeScript costs against a compiled language. Built by corner.ts with cc -O3 -lm.
 *
 * In (stdin): the numbers of one corner, its branch and start table, how many travels and repeats, the travels;
 * out: nanoseconds a solve, and the sum of the results, which has to be that of the TypeScript.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

typedef struct {
  double lfx, lfy, lfz, lux, luy, luz, lvx, lvy, lvz;
  double ufx, ufy, ufz, uux, uuy, uuz, uvx, uvy, uvz;
  double a0, a1, a2, b0, b1, b2, k0, k1, k2, branchU, overUpright;
  double tix, tiy, tiz, trackAlong, trackArm2, trackK, branchT;
  double wheelN, wheelR, wheelM, wheelZ;
  double pfx, pfy, pfz, pux, puy, puz, pvx, pvy, pvz, rodN, rodR, rodM;
  double rux, ruy, ruz, rvx, rvy, rvz, rodK, branchR;
  double steerHeld, carrier;
} Constants;

/* Limits and start table of solve-travel.ts; the cells follow in an array of their own. */
typedef struct {
  double low, high, tLow, tHigh, exact, near, lowest, perMetre, cells;
} Branch;

/* Read field by field in this order, which corner.ts keeps. */
#define FIELDS(type) (sizeof(type) / sizeof(double))

typedef struct {
  double t, cosL, sinL, cosU, sinU, rootU;
  double lx, ly, lz, nx, ny, nz;
  double rx, ry, rz, mx, my, mz, rootT, wx, wy, wz;
  double cosR, sinR, rootR, rateU, spinX, spinY, spinZ, slope;
} Pose;

enum { PLACED, UPPER_BINDS, TRACK_ROD_BINDS, ROD_BINDS };

static int place_track_rod(const Constants *k, Pose *p) {
  double nx = p->nx, ny = p->ny, nz = p->nz;
  double dx = k->tix - p->lx, dy = k->tiy - p->ly, dz = k->tiz - p->lz;
  double along = dx * nx + dy * ny + dz * nz;
  double whole = dx * dx + dy * dy + dz * dz;
  double square = whole - along * along;
  double g = k->trackK + 0.5 * whole - k->trackAlong * along;
  double reach = k->trackArm2 * square;
  double rest = reach - g * g;
  if (!(rest > 0)) return TRACK_ROD_BINDS;
  double root = k->branchT * sqrt(rest);
  double qx = dx - along * nx, qy = dy - along * ny, qz = dz - along * nz;
  double sx = ny * dz - nz * dy, sy = nz * dx - nx * dz, sz = nx * dy - ny * dx;
  double overSquare = 1 / square;
  double gs = g * overSquare, hs = root * overSquare;
  double rx = gs * qx + hs * sx, ry = gs * qy + hs * sy, rz = gs * qz + hs * sz;
  double mx = gs * sx - hs * qx, my = gs * sy - hs * qy, mz = gs * sz - hs * qz;
  p->rootT = root;
  p->rx = rx;
  p->ry = ry;
  p->rz = rz;
  p->mx = mx;
  p->my = my;
  p->mz = mz;
  p->wx = p->lx + k->wheelN * nx + k->wheelR * rx + k->wheelM * mx;
  p->wy = p->ly + k->wheelN * ny + k->wheelR * ry + k->wheelM * my;
  p->wz = p->lz + k->wheelN * nz + k->wheelR * rz + k->wheelM * mz;
  return PLACED;
}

static int hold_steer(const Constants *k, Pose *p) {
  p->rootT = 0;
  p->rx = 1;
  p->ry = 0;
  p->rz = 0;
  p->mx = 0;
  p->my = p->nz;
  p->mz = -p->ny;
  p->wx = p->lx + k->wheelN * p->nx + k->wheelR;
  p->wy = p->ly + k->wheelN * p->ny + k->wheelM * p->my;
  p->wz = p->lz + k->wheelN * p->nz + k->wheelM * p->mz;
  return PLACED;
}

static int place_upright(const Constants *k, Pose *p) {
  double t = p->t;
  double half = 1 / (1 + t * t);
  double c = (1 - t * t) * half, s = 2 * t * half;
  double a = k->a0 + k->a1 * c + k->a2 * s;
  double b = k->b0 + k->b1 * c + k->b2 * s;
  double g = k->k0 + k->k1 * c + k->k2 * s;
  double square = a * a + b * b;
  double rest = square - g * g;
  if (!(rest > 0)) return UPPER_BINDS;
  double root = k->branchU * sqrt(rest);
  double overSquare = 1 / square;
  double cu = (a * g + b * root) * overSquare, su = (b * g - a * root) * overSquare;
  double lx = k->lfx + c * k->lux + s * k->lvx;
  double ly = k->lfy + c * k->luy + s * k->lvy;
  double lz = k->lfz + c * k->luz + s * k->lvz;
  p->nx = (k->ufx + cu * k->uux + su * k->uvx - lx) * k->overUpright;
  p->ny = (k->ufy + cu * k->uuy + su * k->uvy - ly) * k->overUpright;
  p->nz = (k->ufz + cu * k->uuz + su * k->uvz - lz) * k->overUpright;
  p->cosL = c;
  p->sinL = s;
  p->cosU = cu;
  p->sinU = su;
  p->rootU = root;
  p->lx = lx;
  p->ly = ly;
  p->lz = lz;
  return k->steerHeld != 0 ? hold_steer(k, p) : place_track_rod(k, p);
}

static int place_rocker(const Constants *k, Pose *p) {
  double dx, dy, dz;
  if (k->carrier == 1) {
    dx = k->pfx + p->cosL * k->pux + p->sinL * k->pvx;
    dy = k->pfy + p->cosL * k->puy + p->sinL * k->pvy;
    dz = k->pfz + p->cosL * k->puz + p->sinL * k->pvz;
  } else if (k->carrier == 2) {
    dx = k->pfx + p->cosU * k->pux + p->sinU * k->pvx;
    dy = k->pfy + p->cosU * k->puy + p->sinU * k->pvy;
    dz = k->pfz + p->cosU * k->puz + p->sinU * k->pvz;
  } else if (k->carrier == 3) {
    dx = p->lx - k->pfx + k->rodN * p->nx + k->rodR * p->rx + k->rodM * p->mx;
    dy = p->ly - k->pfy + k->rodN * p->ny + k->rodR * p->ry + k->rodM * p->my;
    dz = p->lz - k->pfz + k->rodN * p->nz + k->rodR * p->rz + k->rodM * p->mz;
  } else return PLACED;
  double a = k->rux * dx + k->ruy * dy + k->ruz * dz;
  double b = k->rvx * dx + k->rvy * dy + k->rvz * dz;
  double g = k->rodK + 0.5 * (dx * dx + dy * dy + dz * dz);
  double square = a * a + b * b;
  double rest = square - g * g;
  if (!(rest > 0)) return ROD_BINDS;
  double root = k->branchR * sqrt(rest);
  double overSquare = 1 / square;
  p->cosR = (a * g + b * root) * overSquare;
  p->sinR = (b * g - a * root) * overSquare;
  p->rootR = root;
  return PLACED;
}

static double slope(const Constants *k, Pose *p) {
  double nx = p->nx, ny = p->ny, nz = p->nz;
  double ldx = p->cosL * k->lvx - p->sinL * k->lux;
  double ldy = p->cosL * k->lvy - p->sinL * k->luy;
  double ldz = p->cosL * k->lvz - p->sinL * k->luz;
  double rate = -(nx * ldx + ny * ldy + nz * ldz) / (p->rootU * k->overUpright);
  double ndx = (rate * (p->cosU * k->uvx - p->sinU * k->uux) - ldx) * k->overUpright;
  double ndy = (rate * (p->cosU * k->uvy - p->sinU * k->uuy) - ldy) * k->overUpright;
  double ndz = (rate * (p->cosU * k->uvz - p->sinU * k->uuz) - ldz) * k->overUpright;
  double about = 0;
  if (k->steerHeld == 0) {
    double rx = p->rx, ry = p->ry, rz = p->rz;
    double turn = ndx * rx + ndy * ry + ndz * rz;
    double tx = ldx + k->trackAlong * ndx - turn * nx;
    double ty = ldy + k->trackAlong * ndy - turn * ny;
    double tz = ldz + k->trackAlong * ndz - turn * nz;
    double qx = p->lx + k->trackAlong * nx + rx - k->tix;
    double qy = p->ly + k->trackAlong * ny + ry - k->tiy;
    double qz = p->lz + k->trackAlong * nz + rz - k->tiz;
    about = -(qx * tx + qy * ty + qz * tz) / p->rootT;
  }
  double spinX = ny * ndz - nz * ndy + about * nx;
  double spinY = nz * ndx - nx * ndz + about * ny;
  p->rateU = rate;
  p->spinX = spinX;
  p->spinY = spinY;
  p->spinZ = nx * ndy - ny * ndx + about * nz;
  p->slope = ldz + spinX * (p->wy - p->ly) - spinY * (p->wx - p->lx);
  return p->slope;
}

static int try_at(const Constants *k, Pose *p, double t) {
  double before = p->t;
  p->t = t;
  int status = place_upright(k, p);
  if (status == PLACED) return status;
  p->t = before;
  place_upright(k, p);
  return status;
}

static int refine(const Constants *k, const Branch *b, Pose *p, double wanted) {
  double low = b->tLow, high = b->tHigh;
  int failed = UPPER_BINDS;
  for (int step = 0; step < 80; step++) {
    double t = p->t;
    double miss = wanted - p->wz;
    if (miss > 0) low = t;
    else high = t;
    double rise = slope(k, p) * 2 / (1 + t * t);
    double next = t + miss / rise;
    if (!(next >= low && next <= high)) next = 0.5 * (low + high);
    int status = try_at(k, p, next);
    if (status != PLACED) {
      failed = status;
      if (next > t) high = next;
      else low = next;
    } else if (next == t || fabs(wanted - p->wz) <= b->exact) break;
  }
  return fabs(wanted - p->wz) <= b->near ? PLACED : failed;
}

static int refine_from(const Constants *k, const Branch *b, Pose *p, double t, double wanted) {
  p->t = t;
  place_upright(k, p);
  return refine(k, b, p, wanted);
}

static int solve_travel(const Constants *k, const Branch *b, const double *start, Pose *p, double travel) {
  double wanted = k->wheelZ + travel;
  double place = (travel - b->lowest) * b->perMetre;
  double cell = fmin(b->cells - 1, floor(place));
  double x = place - cell;
  const double *c = start + 4 * (long)cell;
  double t = c[0] + x * (c[1] + x * (c[2] + x * c[3]));
  p->t = t;
  if (place_upright(k, p) != PLACED) return refine_from(k, b, p, 0, wanted);
  p->t = t + (wanted - p->wz) * (c[1] + x * (2 * c[2] + x * 3 * c[3])) * b->perMetre;
  if (!(p->t >= b->tLow && p->t <= b->tHigh) || place_upright(k, p) != PLACED) return refine_from(k, b, p, t, wanted);
  double miss = wanted - p->wz;
  return miss <= b->exact && miss >= -b->exact ? PLACED : refine(k, b, p, wanted);
}

/* As solve() of position-solver.ts: kept out of line so that the call is paid for, as it is there. */
__attribute__((noinline)) static int solve(const Constants *k, const Branch *b, const double *start, Pose *p,
                                           double travel, double *out) {
  if (!(travel >= b->low && travel <= b->high)) return 0;
  if (solve_travel(k, b, start, p, travel) != PLACED || place_rocker(k, p) != PLACED) return 0;
  out[0] = p->wx;
  out[1] = p->wy;
  out[2] = p->wz;
  out[3] = p->cosR;
  out[4] = p->sinR;
  return 1;
}

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec * 1e9 + t.tv_nsec;
}

static int read_numbers(double *to, size_t count) {
  for (size_t i = 0; i < count; i++)
    if (scanf("%lf", to + i) != 1) return 0;
  return 1;
}

int main(void) {
  Constants k;
  Branch b;
  long count, repeats;
  if (!read_numbers((double *)&k, FIELDS(Constants)) || !read_numbers((double *)&b, FIELDS(Branch))) return 1;
  double *start = malloc(4 * (size_t)b.cells * sizeof(double));
  if (start == NULL || !read_numbers(start, 4 * (size_t)b.cells)) return 1;
  if (scanf("%ld %ld", &count, &repeats) != 2) return 1;
  double *travels = malloc(count * sizeof(double));
  if (travels == NULL || !read_numbers(travels, count)) return 1;
  Pose p;
  memset(&p, 0, sizeof p);
  double out[5] = {0}, sum = 0, begin = now();
  for (long r = 0; r < repeats; r++)
    for (long i = 0; i < count; i++) {
      solve(&k, &b, start, &p, travels[i], out);
      sum += out[0] + out[1] + out[2] + out[3] + out[4];
    }
  printf("%.17g %.17g\n", (now() - begin) / ((double)count * repeats), sum);
  free(travels);
  free(start);
  return 0;
}
